/**
 * A whole number of 32 bits in the form that compiled code keeps such in. A number that came out of a division or as −0 equals it but is kept
 * as a float, and one float among the whole numbers of all objects of a kind has the machine compile anew whatever reads them.
 */
export function whole(value: number): number {
  return value | 0;
}
