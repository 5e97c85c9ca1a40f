/** BENCH_QUICK=1 asks for few repetitions: to see that everything runs, not for figures. */
export const quick = process.env['BENCH_QUICK'] === '1'
