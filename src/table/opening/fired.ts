export * from '../fired/fired-pot.ts'
export { lessonOf, limitOf, type TakenLesson } from '../firing/taken.ts'
