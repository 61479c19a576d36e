/** A pot's number, with what piece of it is meant where there are two. */
export type Name = number | string
