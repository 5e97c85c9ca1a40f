import { Piscina } from 'piscina'
import type { Answered, Task } from './batch'

/** Threads that answer batches. */
export interface Pool {
  /** The task's bytes go to the thread and are empty afterwards. */
  answer(task: Task): Promise<Answered>
  /** Ends when all that was asked is answered. */
  close(): Promise<void>
  /** Ends at once. */
  destroy(): Promise<void>
}

/** Starts as many threads as asked, which last until the pool is closed. */
export function startPool(threads: number): Pool {
  const pool = new Piscina<Task, Answered>({
    filename: new URL('./sweep-thread.js', import.meta.url).href,
    name: 'answerBatch',
    minThreads: threads,
    maxThreads: threads,
  })
  return {
    answer: (task) => pool.run(task, { transferList: [task.bytes.buffer] }),
    close: () => pool.close(),
    destroy: () => pool.destroy(),
  }
}
