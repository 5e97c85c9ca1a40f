import { parentPort } from 'node:worker_threads'
import { expose } from 'comlink'
import nodeEndpoint from 'comlink/dist/esm/node-adapter.mjs'
import { library } from '../../src/data/library'
import type { Brief } from '../../src/domain/optimise/brief/brief'
import type { LinearProgram } from '../../src/domain/lp/program'
import type { ProgramOutcome } from '../../src/domain/lp/solvers/solve-program'
import type { Answer } from '../../src/domain/optimise/brief/answer'
import { solveBrief } from '../../src/domain/optimise/solve/solve'
import { solveWithJslp } from '../../src/domain/lp/solvers/jslp'

/** javascript-lp-solver alone, with nobody to step in for it, where it can be stopped. */
export interface JslpThread {
  ready(): Promise<true>
  program(program: LinearProgram): Promise<ProgramOutcome>
  brief(brief: Brief): Promise<Answer>
}

const jslp: JslpThread = {
  ready: () => Promise.resolve(true),
  program: (program) => Promise.resolve(solveWithJslp(program)),
  brief: (brief) => Promise.resolve(solveBrief(brief, library, solveWithJslp)),
}

if (!parentPort) throw new Error('This module runs in a worker thread')
expose(jslp, nodeEndpoint(parentPort))
