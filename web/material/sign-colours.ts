/** What is drawn over the scene: ink and white are not marks of a part; the yellow says where to look. */
export const LOOK_HERE = '#f0e442'
export const INK = '#12181d'
export const WHITE = '#ffffff'
