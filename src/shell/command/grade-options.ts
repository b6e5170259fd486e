import { InvalidArgumentError } from 'commander';
import { type DrawnGrade, drawnGrades, readGrade } from '../../index.ts';

const known = drawnGrades.join(', ');

/** Reads `--grades FAS,1C`: grades of which imaginary lumber can be drawn. */
export function gradesOption(text: string): DrawnGrade[] {
  const grades = text.split(',').map((word) => gradeCalled(word));
  return drawnGrades.filter((grade) => grades.includes(grade));
}

/** Reads `--prices FAS=9.80,1C=6.40`: money for a board foot of each. */
export function pricesOption(text: string): Map<DrawnGrade, number> {
  return new Map(
    text.split(',').map((pair) => {
      const [word = '', amount = ''] = pair.split('=');
      const price = amount.trim().replace(/^[$€£]/, '');
      if (!/^\d+(?:\.\d+)?$/.test(price))
        throw new InvalidArgumentError('Give each price as GRADE=MONEY, such as FAS=9.80,1C=6.40.');
      return [gradeCalled(word), Number(price)] as const;
    }),
  );
}

function gradeCalled(word: string): DrawnGrade {
  const read = readGrade(word);
  const grade = read === 'F1F' ? 'Selects' : read;
  const drawn = drawnGrades.find((candidate) => candidate === grade);
  if (drawn === undefined) throw new InvalidArgumentError(`Grades are ${known}.`);
  return drawn;
}
