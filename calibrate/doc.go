// Package calibrate turns taps on a photo of a machine into places in its plane
// of motion, each with the error it may have.
//
// # How a photo sees a plane
//
// A machine moves in a plane, and a camera sees that plane as a homography. Of
// its eight numbers four only say where the origin is, which way is up and how
// large a metre is; what is left is the tilt of the plane against the photo and
// the camera. So a plane seen in a photo is described by
//
//	quantity    symbol  unit   sense
//	tilt        a, b    rad    rotation vector of the plane about the photo's right and down axes; 0, 0 if the camera looks square at it
//	scale       s       px/m   at the origin
//	lens        k       1/px   1 over the focal length; 0 sees without perspective
//	middle      c       px     where the camera's axis meets the photo
//
// and a place P in the plane, turned by the tilt to R·P, is seen at
//
//	c + (o - c + s·(R·P)xy) / (1 + k·s·(R·P)z)
//
// where o is the pixel chosen as origin. With k = 0 that is the affine camera,
// so nothing has to be told apart. The two degrees of tilt and the scale are
// what references in the plane must give: known lengths, rectangles and round
// plates, one or several together, by least squares. The lens and the middle
// are known beforehand within limits and enter with those.
//
// Source: R. Hartley, A. Zisserman, Multiple View Geometry in Computer Vision,
// 2nd ed. 2003, ch. 6 (cameras), 8.1 (plane to image), from memory.
//
// # What can be known
//
//   - A length gives the scale, and no tilt: the camera must have looked square.
//     Being 3° off (1 standard deviation) is allowed for in the error.
//   - A rectangle gives everything.
//   - A round plate gives scale and the amount of tilt, but two planes explain
//     its rim exactly alike, tilted to opposite sides. [Survey.Near] or a second
//     reference decides; without, places are taken half-way and their error
//     covers both.
//
// # Errors
//
// The survey is repeated [Repeats] times with every tap, length, lens and level
// drawn anew, as a person would repeat it, from a fixed seed. ± is twice the
// root mean square deviation, as everywhere (package quantity).
//
// What is not in the plane of motion is displaced by the share offset/distance;
// [Plane.Distance] tells the distance. Lens distortion is not modelled: phones
// take it out; keep the machine away from the photo's edges.
//
// Frame of results: x forward, y up, m, seen from the person's right. Frame of
// photos: right, down, in pixels, from the upper left corner.
package calibrate
