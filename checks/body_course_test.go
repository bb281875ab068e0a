package checks

import (
	"gonum.org/v1/gonum/spatial/r3"
)

// speeding is how machine and arm ought to move at one position: the driver's
// rate, the grip's speed along the path and its growth, and the accelerations of
// driver and arm.
type speeding struct {
	rate, grip, growth, driver float64
	hinges                     []float64
}

// course returns the rates of all hinges at a position and how machine and arm
// ought to move there, from the places on both sides by fourth-order differences
// and from the minimum-jerk course (T. Flash and N. Hogan, J Neurosci 5 (1985)
// 1688, from memory) s = S·(10τ³-15τ⁴+6τ⁵), τ the share of the time up, or back from S.
//
// With q the driver, s′ the contact's speed over q̇: q̇ = ṡ/s′ and
// q̈ = (s̈ - s″q̇²)/s′; any other coordinate has y′q̇ and y″q̇² + y′q̈.
func (g grasp) course(i int) (rates []float64, w speeding) {
	first, second := g.slopes(i)
	rates, w.hinges = make([]float64, len(first)-3), make([]float64, len(first)-5)
	if g.Tempo == nil {
		return rates, w
	}
	path, bend := r3.Vec{X: first[0], Y: first[1], Z: first[2]}, r3.Vec{X: second[0], Y: second[1], Z: second[2]}
	per := r3.Norm(path)
	whole, share, takes := g.Travel[g.Len()-1], g.Travel[i]/g.Travel[g.Len()-1], g.Tempo.Up
	if g.lowering {
		whole, share, takes = -whole, 1-share, g.Tempo.Down
	}
	x := timeAt(share)
	w.grip = whole / takes * 30 * x * x * (1 - x) * (1 - x)
	w.growth = whole / (takes * takes) * 60 * x * (1 - x) * (1 - 2*x)
	w.rate = w.grip / per
	w.driver = (w.growth - r3.Dot(path, bend)/per*w.rate*w.rate) / per
	for k := range rates {
		rates[k] = first[3+k] * w.rate
	}
	for k := range w.hinges {
		w.hinges[k] = second[5+k]*w.rate*w.rate + first[5+k]*w.driver
	}
	return rates, w
}

// timeAt is the τ at which the minimum-jerk course has come a share of its way.
func timeAt(share float64) float64 {
	low, high := 0.0, 1.0
	for range 60 {
		if x := (low + high) / 2; x*x*x*(10+x*(6*x-15)) < share {
			low = x
		} else {
			high = x
		}
	}
	return low
}

// slopes returns first and second derivatives over the driver of the contact's
// place and then of all hinges' angles.
func (g grasp) slopes(i int) (first, second []float64) {
	var y [5][]float64
	for k := range y {
		at := g.Placements[i+k-2].Contact
		y[k] = append([]float64{at.X, at.Y, at.Z}, g.angles(i+k-2)...)
	}
	h := g.Driver[i+1] - g.Driver[i]
	for j := range y[0] {
		first = append(first, (y[0][j]-8*y[1][j]+8*y[3][j]-y[4][j])/(12*h))
		second = append(second, (-y[0][j]+16*y[1][j]-30*y[2][j]+16*y[3][j]-y[4][j])/(12*h*h))
	}
	return first, second
}
