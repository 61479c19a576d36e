import type { kiln as english } from '../en/kiln.ts'

/** Spanish of what is called when nobody looks at the kiln's screen. */
export const kiln: typeof english = {
  call: {
    cone: 'Horno: mira los conos',
    hold: 'Horno: ya no hay que mantener',
    lid: (temp: string) => `Horno: hacia ${temp}, la tapa`,
    unload: (temp: string) => `Horno: hacia ${temp}, a sacar`,
    read: 'Horno: lee otra vez',
  },
  body: 'Es un cálculo: mira antes el cono, o el termómetro.',
}
