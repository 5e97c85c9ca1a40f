/** What `folder-rules.js` exports for its tests; ESLint reads that file as it stands. */
export declare const FOLDER_RULES: Readonly<
  Record<string, { readonly folders: readonly string[]; readonly packages: readonly string[] }>
>
