package calibrate

import (
	"fmt"
	"math"

	"steelyard/planar"
	"steelyard/quantity"
)

const (
	// steep is a tilt in rad past which the photo is better taken again.
	steep = 25 * planar.Degree
	// nearby is a distance in m below which what stands in front of the plane
	// reads wrong by more than 4 % for each 100 mm.
	nearby = 2.5
	// shaky is the misfit past which known sizes contradict each other.
	shaky = 2.5
	// sideways is a tilt in rad that shows which side is nearer.
	sideways = 5 * planar.Degree
)

// Words says how good the plane is and what would make it better, a sentence
// each.
func (p *Plane) Words(in quantity.System) []string {
	words := []string{p.saySize(in), p.sayTilt()}
	if p.split {
		words = append(words, p.saySplit(in))
	}
	if p.survey.Near != AnySide && !p.split && p.Tilt() > sideways && !p.view.nearer(p.survey.Near) {
		words = append(words, "The known sizes show the other side of the photo nearer than you said; check which it was.")
	}
	if p.survey.Plumb == nil && p.survey.Level == nil {
		words = append(words, "Without a plumb line the phone counts as held level within ±2°. A plumb line makes up and forward sure.")
	}
	if p.misfit > shaky {
		words = append(words, "The known sizes do not agree within their ±. Check each tap, and that all lie in the plane of motion.")
	}
	return append(words, p.sayParallax(in))
}

// written returns a length as the reader's tape shows it.
func written(metres float64, in quantity.System) string {
	if metres >= 1 {
		return quantity.Of(math.Round(10*metres)/10, 0, quantity.Metre).Format(in)
	}
	return quantity.Of(math.Round(1e4*metres)/10, 0, quantity.Millimetre).Format(in)
}

func (p *Plane) saySize(in quantity.System) string {
	return fmt.Sprintf("One pixel is %s; a tap good to ±%.3g pixels is good to ±%s.", written(p.PerPixel(), in), 2*p.tap, written(p.Tap(), in))
}

func (p *Plane) sayTilt() string {
	degrees := math.Round(p.Tilt().Degrees())
	switch {
	case p.squareOnly():
		return "A length cannot show whether the camera looked square at the machine; the ± allows for 6° off. A rectangle or a round plate takes the tilt out."
	case p.Tilt() > steep:
		return fmt.Sprintf("The camera looked %.0f° off square. That is taken out, but a photo from squarer to the side would be better.", degrees)
	case degrees < 2:
		return "The camera looked square at the machine."
	default:
		return fmt.Sprintf("The camera looked %.0f° off square; that is taken out.", degrees)
	}
}

// squareOnly reports whether the tilt is taken as none for want of references.
func (p *Plane) squareOnly() bool {
	return p.survey.camera().tiltError == float64(squareError)
}

func (p *Plane) saySplit(in quantity.System) string {
	s := "One round plate looks the same turned either way. Say which side of the photo was nearer to the camera, or add a second known size; until then each place is put half-way between the two"
	if m, err := p.Measure(Pixel(p.survey.middle())); err == nil {
		return fmt.Sprintf("%s, good to ±%s in the middle of the photo.", s, written(math.Hypot(m.Plus.X, m.Plus.Y), in))
	}
	return s + "."
}

func (p *Plane) sayParallax(in quantity.System) string {
	d := p.Distance()
	const offset = 0.1
	if math.IsInf(d, 1) || p.survey.Cropped {
		return "What stands in front of the plane of motion is measured too large, what stands behind it too small. Stand far off and zoom in."
	}
	s := fmt.Sprintf("The camera stood about %s away. What is %s in front of the plane of motion is measured %.1f %% too large, what is behind it too small.",
		written(d, in), written(offset, in), 100*offset/(d-offset))
	if d < nearby {
		s += " Stand further off and zoom in."
	}
	return s
}
