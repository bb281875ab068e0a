package view

import (
	"math"

	"steelyard/internal/server/api"
	"steelyard/planar"
)

// What a picture or a reading cannot show is not sent: lengths go to 0.01 mm,
// forces to 0.01 N, ratios, shares and angles to a millionth.
const (
	lengthDigits = 5
	forceDigits  = 2
	shareDigits  = 6
)

// round rounds x to so many decimals, with no minus before a zero.
func round(x float64, decimals int) float64 {
	p := math.Pow10(decimals)
	return math.Round(x*p)/p + 0
}

func metres(x float64) float64  { return round(x, lengthDigits) }
func newtons(x float64) float64 { return round(x, forceDigits) }
func share(x float64) float64   { return round(x, shareDigits) }

func place(v planar.Vec) api.Place { return api.Place{metres(v.X), metres(v.Y)} }

func unit(v planar.Vec) api.Place { return api.Place{share(v.X), share(v.Y)} }

func places(vs []planar.Vec) []api.Place {
	out := make([]api.Place, len(vs))
	for i, v := range vs {
		out[i] = place(v)
	}
	return out
}

func vec(p api.Place) planar.Vec { return planar.Vec{X: p[0], Y: p[1]} }

func each(xs []float64, f func(float64) float64) []float64 {
	out := make([]float64, len(xs))
	for i, x := range xs {
		out[i] = f(x)
	}
	return out
}

// known returns the number, or nil in a gap.
func known(has bool, x float64) *float64 {
	if !has {
		return nil
	}
	return &x
}
