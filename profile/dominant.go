package profile

import "math"

// Narrowing tells what measuring one thing without error would do to a band.
type Narrowing struct {
	Measurement Measurement
	Share       float64 // of the variance, 0 to 1
	Half        float64 // half width of the band now, in the unit of what is banded
	Without     float64 // half width if this measurement were exact
}

// Dominant returns the measurement whose narrowing would narrow the band of
// the force most, over the whole travel: its share is that of the variance of
// the force averaged over the travel, its half widths are root mean squares in
// N. It is false if no measurement widens the band.
//
// In a linear band the shares are exact and add up to 1. In a sampled band
// they are squared correlations with the force (the part of the variance that
// a straight line explains), good to about 1/√draws, and add up to less than 1
// where the curve does not follow the measurements in straight lines.
func (b *Band) Dominant() (Narrowing, bool) {
	width, total := 0.0, 0.0
	for i, v := range b.Between {
		w := b.weight(i)
		width += w
		total += w * v.Half() * v.Half()
	}
	return b.narrowing(math.Sqrt(total/width), func(j int) float64 {
		part := 0.0
		for i, c := range b.forceParts[j] {
			part += b.weight(i) * c * c
		}
		return part / width
	})
}

// DominantFor returns the same for one reading.
func (b *Band) DominantFor(q Reading) (Narrowing, bool) {
	return b.narrowing(b.readings[q].Half(), func(j int) float64 {
		return b.readingParts[j][q] * b.readingParts[j][q]
	})
}

// narrowing picks the measurement with the greatest part of the squared half
// width, the first of equals.
func (b *Band) narrowing(half float64, part func(j int) float64) (Narrowing, bool) {
	best := Narrowing{Half: half}
	if half == 0 {
		return best, false
	}
	for j, m := range b.Measurements {
		if s := part(j) / (half * half); s > best.Share {
			best.Measurement, best.Share = m, min(1, s)
		}
	}
	best.Without = half * math.Sqrt(1-best.Share)
	return best, best.Share > 0
}

// weight returns the share of the travel that position i stands for: half the
// way to each neighbour with a force.
func (b *Band) weight(i int) (w float64) {
	has := func(j int) bool { return present(b.Gap, len(b.Share), j) }
	if !has(i) {
		return 0
	}
	if has(i - 1) {
		w += (b.Share[i] - b.Share[i-1]) / 2
	}
	if has(i + 1) {
		w += (b.Share[i+1] - b.Share[i]) / 2
	}
	return w
}
