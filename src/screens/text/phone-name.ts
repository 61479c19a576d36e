/** How long a phone's name is on the screen: one of three in a class of forty has it twice once in 60 classes. */
const LETTERS = 3

/** A phone as the others call it: the first letters of its random name, the same on every phone. */
export const phoneName = (phone: string): string => phone.slice(0, LETTERS).toUpperCase()
