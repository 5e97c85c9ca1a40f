import { normalised } from '../../blend/blend'
import { checkBlend } from '../../blend/check-blend'
import type { Library } from '../../blend/library'
import type { Brief } from '../brief/brief'
import { checkBrief } from '../brief/check-brief'
import { betterStudy } from './better'
import { likeStudy } from './like'
import type { StudyAnswer, StudyQuestion } from './question'
import { withoutStudy } from './without'

/**
 * Answers a one-step study of a blend on the maker's shelf. Every blend it gives is checked from the
 * oils alone; throws UnsoundAnswer where that check and the solver disagree.
 */
export function oneStepStudy(brief: Brief, asked: StudyQuestion, library: Library): StudyAnswer {
  const problems = [...checkBrief(brief, library), ...checkBlend(asked.base, library, 'base')]
  if (problems.length > 0) return { status: 'invalid', problems }
  const question = { ...asked, base: normalised(asked.base) }
  switch (question.kind) {
    case 'better':
      return betterStudy(brief, question, library)
    case 'like':
      return likeStudy(brief, question, library)
    case 'without':
      return withoutStudy(brief, question, library)
  }
}
