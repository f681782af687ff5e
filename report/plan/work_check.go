// What can be wrong with how and when a painting is to be painted.

package plan

// What can be asked for.
const MostDetail = 10 // of the drawing
