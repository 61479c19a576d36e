export { BackLine } from '../desk/back-line.tsx'
