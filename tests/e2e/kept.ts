import type { Page } from 'playwright-core'
import { expect } from 'vitest'

/** What lies in the page's database now; undefined where nothing does. */
function keptRecord(page: Page): Promise<unknown> {
  return page.evaluate(
    () =>
      new Promise<unknown>((resolve, reject) => {
        const opening = indexedDB.open('barwright')
        opening.onerror = () => reject(new Error('The database did not open'))
        opening.onsuccess = () => {
          const asking = opening.result.transaction('work').objectStore('work').get('now')
          asking.onsuccess = () => {
            opening.result.close()
            resolve(asking.result)
          }
        }
      }),
  )
}

/**
 * Waits until the database holds this text somewhere in the kept work, as JSON has it. What the page says
 * of keeping is not waited for: it may still be of the write before.
 */
export async function untilKept(page: Page, text: string): Promise<void> {
  await expect.poll(async () => JSON.stringify(await keptRecord(page))).toContain(text)
}

/** Puts a value where the kept work lies. */
export function plant(page: Page, work: unknown): Promise<void> {
  return page.evaluate(
    (value) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('barwright')
        opening.onerror = () => reject(new Error('The database did not open'))
        opening.onsuccess = () => {
          const transaction = opening.result.transaction('work', 'readwrite')
          transaction.objectStore('work').put(value, 'now')
          transaction.oncomplete = () => {
            opening.result.close()
            resolve()
          }
        }
      }),
    work,
  )
}
