/** What `rooms.js` exports; ESLint reads that file as it stands, so it is no TypeScript. */
export declare const ROOMS: Readonly<Record<string, readonly string[]>>
export declare function roomOf(path: string): string | undefined
export declare function importsBelow(folder?: string): Map<string, string[]>
export declare function arrowsBetween(
  imports: Map<string, string[]>,
  groupOf: (file: string) => string | undefined,
): Map<string, Set<string>>
export declare function cycleIn(arrows: ReadonlyMap<string, Iterable<string>>): string[] | undefined
export declare function floors(): string[][]
export declare function picture(): string
