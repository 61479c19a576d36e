/** The pot as a body: outline, areas, volumes, displacement, neck. */
export * from './areas.ts'
export * from './displacement.ts'
export * from './neck.ts'
export * from './outline.ts'
