import { MessageChannel } from 'node:worker_threads'
import { expose } from 'comlink'
import nodeEndpoint from 'comlink/dist/esm/node-adapter.mjs'
import { describe, expect, test } from 'vitest'
import type { Brief } from '../../src/domain/optimise/brief/brief'
import type { Answer } from '../../src/domain/optimise/brief/answer'
import {
  CalledOff,
  SolverClient,
  SolverClosed,
  type SolverThread,
  TookTooLong,
} from '../../src/worker/client'
import type { SolverName, SolverService } from '../../src/worker/protocol'
import { until } from '../setup/until'

const BRIEF: Brief = { oils: {}, groups: [], measures: {}, goal: { minimise: 'wear' } }
/** Far below the client's own limits, so that a test of slowness is quick. */
const LIMIT_MS = 1000

describe('the client', () => {
  test('starts one thread for several questions', async () => {
    const { client, threads } = clientOf(answering)
    expect(await ask(client)).toEqual(answerOf('javascript-lp-solver'))
    expect(await ask(client)).toEqual(answerOf('javascript-lp-solver'))
    expect(threads.length).toBe(1)
    client.close()
  })

  test('asks one question at a time, in order', async () => {
    const log: string[] = []
    const { client } = clientOf((name, brief) => {
      log.push(`asked ${'minimise' in brief.goal ? brief.goal.minimise : ''}`)
      return new Promise((resolve) => {
        setImmediate(() => {
          log.push(`answered ${'minimise' in brief.goal ? brief.goal.minimise : ''}`)
          resolve(answerOf(name))
        })
      })
    })
    const of = (measure: string) => ({ ...BRIEF, goal: { minimise: measure } })
    await Promise.all([ask(client, of('wear')), ask(client, of('lather'))])
    expect(log).toEqual(['asked wear', 'answered wear', 'asked lather', 'answered lather'])
    client.close()
  })

  test('ends a thread that does not answer in time and asks HiGHS in a new one', async () => {
    const { client, threads } = clientOf((name) =>
      name === 'highs' ? answering(name) : new Promise(() => undefined),
    )
    expect(await ask(client)).toEqual(answerOf('highs'))
    expect(threads.map(({ ended }) => ended)).toEqual([true, false])
    client.close()
    expect(threads.map(({ ended }) => ended)).toEqual([true, true])
  })

  test('asks HiGHS at once where HiGHS is wanted', async () => {
    const { client } = clientOf(answering, 'highs')
    expect(await ask(client)).toEqual(answerOf('highs'))
    client.close()
  })

  test('passes on an error of the service, and answers the next question', async () => {
    let calls = 0
    const { client, threads } = clientOf((name) => {
      calls += 1
      if (calls === 1) throw new Error('No such oil')
      return answering(name)
    })
    await expect(ask(client)).rejects.toThrow('No such oil')
    expect(await ask(client)).toEqual(answerOf('javascript-lp-solver'))
    expect(threads.length).toBe(1)
    client.close()
  })

  test('rejects with the reason when the thread dies, and starts another for the next question', async () => {
    let calls = 0
    const { client, threads } = clientOf((name) => {
      calls += 1
      if (calls > 1) return answering(name)
      threads[0]?.die(new Error('out of memory'))
      return new Promise(() => undefined)
    })
    await expect(ask(client)).rejects.toThrow('out of memory')
    expect(await ask(client)).toEqual(answerOf('javascript-lp-solver'))
    expect(threads.length).toBe(2)
    client.close()
  })

  test('lets a thread that it ended say so late without ending the one that follows', async () => {
    let calls = 0
    const { client, threads } = clientOf((name) => {
      calls += 1
      return calls === 1 ? new Promise(() => undefined) : answering(name)
    })
    expect(await ask(client)).toEqual(answerOf('highs'))
    threads[0]?.die(new Error('terminated'))
    expect(await ask(client)).toEqual(answerOf('javascript-lp-solver'))
    expect(threads.map(({ ended }) => ended)).toEqual([true, false])
    client.close()
  })

  test('rejects what is under way and what waits when it is closed', async () => {
    let calls = 0
    const { client, threads } = clientOf(() => {
      calls += 1
      return new Promise(() => undefined)
    }, 'barwright')
    const outcomes = Promise.allSettled([ask(client), ask(client)])
    await until(() => expect(calls).toBe(1))
    client.close()
    const closed = { status: 'rejected', reason: expect.any(SolverClosed) as unknown }
    expect(await outcomes).toEqual([closed, closed])
    expect(threads.map(({ ended }) => ended)).toEqual([true])
  })

  test('starts no thread once it is closed', async () => {
    const { client, threads } = clientOf(answering)
    client.close()
    await expect(ask(client)).rejects.toThrow(SolverClosed)
    expect(threads).toEqual([])
  })

  test('says how long it waited', () => {
    expect(new TookTooLong('No answer within 100 ms').name).toBe('TookTooLong')
  })
})

describe('a question that is called off', () => {
  const asked = (client: SolverClient, controller: AbortController) =>
    client.ask((service, solver) => service.solve(solver, BRIEF), { signal: controller.signal })
  const never = () => new Promise<Answer>(() => undefined)

  test('while it waits is never asked', async () => {
    let calls = 0
    const { client } = clientOf(async (name) => {
      calls += 1
      await new Promise(setImmediate)
      return answerOf(name)
    }, 'barwright')
    const controller = new AbortController()
    const [first, second] = [ask(client), asked(client, controller)]
    controller.abort()
    await expect(second).rejects.toThrow(CalledOff)
    await first
    expect(calls).toBe(1)
    client.close()
  })

  test('and goes on has its thread ended, and another one answers the next', async () => {
    let calls = 0
    const { client, threads } = clientOf(
      (name) => (++calls === 1 ? never() : answering(name)),
      'barwright',
    )
    const controller = new AbortController()
    const question = asked(client, controller)
    await until(() => expect(calls).toBe(1))
    controller.abort()
    await expect(question).rejects.toThrow(CalledOff)
    expect(threads.map(({ ended }) => ended)).toEqual([true])
    expect(await ask(client)).toEqual(answerOf('barwright'))
    client.close()
  })

  test('and stops by itself leaves its thread to the next', async () => {
    const controller = new AbortController()
    const { client, threads } = clientOf((name) => {
      controller.abort()
      return answering(name)
    }, 'barwright')
    const question = asked(client, controller)
    expect(await question).toEqual(answerOf('barwright'))
    expect(await ask(client)).toEqual(answerOf('barwright'))
    expect(threads.map(({ ended }) => ended)).toEqual([false])
    client.close()
  })
})

type Solve = (name: SolverName, brief: Brief) => Promise<Answer>

interface FakeThread extends SolverThread {
  ended: boolean
  die(error: Error): void
}

/** A client whose threads are this process, with only `solve` to be asked. */
function clientOf(solve: Solve, solver: SolverName = 'javascript-lp-solver') {
  const threads: FakeThread[] = []
  const spawn = () => {
    const thread = fakeThread(solve)
    threads.push(thread)
    return thread
  }
  return { client: new SolverClient(spawn, solver, LIMIT_MS), threads }
}

function fakeThread(solve: Solve): FakeThread {
  const { port1, port2 } = new MessageChannel()
  const service: Pick<SolverService, 'ready' | 'solve'> = {
    ready: () => Promise.resolve(true),
    solve,
  }
  expose(service, nodeEndpoint(port1))
  let report: (error: Error) => void = () => undefined
  return {
    ended: false,
    endpoint: nodeEndpoint(port2),
    terminate() {
      this.ended = true
      port1.close()
    },
    onError: (listener) => {
      report = listener
    },
    die: (error) => report(error),
  }
}

function ask(client: SolverClient, brief = BRIEF): Promise<Answer> {
  return client.ask((service, solver) => service.solve(solver, brief))
}

function answering(name: SolverName): Promise<Answer> {
  return Promise.resolve(answerOf(name))
}

/** An answer that tells which solver was asked. */
function answerOf(name: SolverName): Answer {
  return { status: 'infeasible', conflict: [name] }
}
