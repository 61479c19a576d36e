/** The pot as a body: outline, areas, volumes, displacement. */
export * from './areas.ts'
export * from './outline.ts'
