/** Reads a table of text: a line of column names, then a line a row, cells between upright strokes. */

/**
 * The rows of a table that comes with the program.
 *
 * @param text first the names of the columns, then the rows
 * @returns a row an object, cell by column name; a table whose rows do not fit its head is a defect and throws
 */
export function readTable<Column extends string>(text: string): readonly Readonly<Record<Column, string>>[] {
  const [head, ...rows] = text
    .trim()
    .split('\n')
    .map((line) => line.split(' | '));
  return rows.map((cells) => {
    if (cells.length !== head!.length)
      throw new Error(`a row of ${cells.length} cells, not ${head!.length}: ${cells[0]}`);
    return Object.fromEntries(cells.map((cell, index) => [head![index]!, cell])) as Record<Column, string>;
  });
}

/** A figure of a table; null where the source has none (a dash). */
export function figure(cell: string): number | null {
  if (cell === '-') return null;
  const value = Number(cell);
  if (cell === '' || !Number.isFinite(value)) throw new Error(`not a figure: "${cell}"`);
  return value;
}
