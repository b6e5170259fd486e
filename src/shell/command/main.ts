/** What `bin/mantelwright.js` needs to run the command. */
export { run } from './run.ts';
export { type World, worldOf } from './world.ts';
