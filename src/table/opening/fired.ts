export * from '../fired/fired-pot.ts'
export { lessonOf, limitOf, type TakenLesson } from '../model/taken.ts'
