import { dirname } from 'node:path'
import { preview } from 'vite'

export interface Site {
  /** Address with a slash at its end, such as `http://127.0.0.1:40001/`. */
  readonly url: string
  readonly close: () => Promise<void>
}

/** Serves a folder of built files on a free local port. An unknown path answers 404. */
export async function serve(folder: string): Promise<Site> {
  const server = await preview({
    configFile: false,
    appType: 'mpa',
    logLevel: 'warn',
    root: dirname(folder),
    build: { outDir: folder },
    preview: { host: '127.0.0.1', port: 0, strictPort: true },
  })
  const url = server.resolvedUrls?.local[0]
  if (url === undefined) throw new Error(`The server for ${folder} has no local address.`)
  return { url, close: () => server.close() }
}
