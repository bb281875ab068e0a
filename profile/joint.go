package profile

import "math"

// joint holds the integrals of two forces over the stretches they share, less
// a pivot of each that keeps the second moments free of cancellation.
type joint struct {
	pivot      Pair
	width      float64
	a, b       float64 // ∫A, ∫B
	aa, ab, bb float64 // ∫A², ∫AB, ∫B²
}

// add integrates the straight lines exactly:
//
//	∫AB dx = w (2 a0 b0 + 2 a1 b1 + a0 b1 + a1 b0) / 6
func (j *joint) add(p piece) {
	if j.width == 0 {
		j.pivot = p.f0
	}
	w := p.x1 - p.x0
	a0, a1 := p.f0.A-j.pivot.A, p.f1.A-j.pivot.A
	b0, b1 := p.f0.B-j.pivot.B, p.f1.B-j.pivot.B
	j.width += w
	j.a += w * (a0 + a1) / 2
	j.b += w * (b0 + b1) / 2
	j.aa += w * (a0*a0 + a0*a1 + a1*a1) / 3
	j.bb += w * (b0*b0 + b0*b1 + b1*b1) / 3
	j.ab += w * (2*a0*b0 + 2*a1*b1 + a0*b1 + a1*b0) / 6
}

func (j joint) mean() Pair {
	if j.width == 0 {
		return Pair{}
	}
	return Pair{j.pivot.A + j.a/j.width, j.pivot.B + j.b/j.width}
}

// spread returns the variances of A and B and their covariance about the given
// means, times the width.
func (j joint) spread(about Pair) (va, vb, cov float64) {
	if j.width == 0 {
		return 0, 0, 0
	}
	// Σ(A-c)² = Σ(A-mean)² + w (mean-c)²
	m := j.mean()
	da, db := m.A-about.A, m.B-about.B
	va = j.aa - j.a*j.a/j.width + j.width*da*da
	vb = j.bb - j.b*j.b/j.width + j.width*db*db
	cov = j.ab - j.a*j.b/j.width + j.width*da*db
	return va, vb, cov
}

// conclude fills in what needs the whole walk.
func (d *Difference) conclude(m [3]joint) {
	width := 0.0
	for k, j := range m {
		width += j.width
		d.Thirds[k] = j.mean()
		d.Mean.A += j.width * d.Thirds[k].A
		d.Mean.B += j.width * d.Thirds[k].B
	}
	if width == 0 {
		return
	}
	d.Covered = min(1, width/d.Span)
	d.Mean.A /= width
	d.Mean.B /= width

	var va, vb, cov float64
	for _, j := range m {
		a, b, c := j.spread(d.Mean)
		va, vb, cov = va+a, vb+b, cov+c
	}
	varies := func(v, mean float64) bool { return math.Sqrt(max(0, v)/width) > level*math.Abs(mean) }
	if varies(va, d.Mean.A) && varies(vb, d.Mean.B) {
		d.Shape, d.HasShape = max(-1, min(1, cov/math.Sqrt(va*vb))), true
	}
}
