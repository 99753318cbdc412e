/**
 * A file as anything that is written may name it: as a person named it, but a path from the root by its last name alone,
 * since its folders tell of the machine and differ on the next.
 */
export function portableName(path: string): string {
  return path.replace(/^(?:\/(?:.*\/)?|[a-z]:[\\/](?:.*[\\/])?|\\\\(?:.*\\)?)(?=.)/is, '');
}
