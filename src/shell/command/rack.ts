import type { Command } from 'commander';
import { register as byHand } from './rack-by-hand.ts';
import { register as fix } from './rack-fix.ts';
import { register as labels } from './rack-labels.ts';
import { register as list } from './rack-list.ts';
import { register as put } from './rack-put.ts';
import type { World } from './world.ts';

/** `mantelwright rack …`: the journal of offcuts, and what is done with it. */
export function register(program: Command, world: World): void {
  const rackCommand = program
    .command('rack')
    .helpCommand(false)
    .description('the offcuts that were kept: put, list, take, discard, fix, undo, labels');
  for (const command of [put, list, byHand, fix, labels]) command(rackCommand, world);
}
