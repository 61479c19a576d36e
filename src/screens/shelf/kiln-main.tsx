export { KilnMain } from '../desk/kiln-main.tsx'
