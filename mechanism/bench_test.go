package mechanism

import (
	"math"
	"math/rand/v2"
	"runtime"
	"sync"
	"testing"
	"time"

	"steelyard/planar"
)

const positions = 101 // in every sweep measured here

// sweeper returns one sweep of the machine as a function to be timed.
func sweeper(b *testing.B, m Machine) func() {
	md := mustCompile(b, m)
	sw := md.NewSweep(positions)
	sweep := func() {
		if err := md.SweepInto(sw); err != nil {
			b.Fatal(err)
		}
	}
	sweep()
	for _, stop := range sw.Stops {
		if stop != nil {
			b.Fatal(stop)
		}
	}
	return sweep
}

// benchmarkSweep measures poses, forces, reactions, tensions, lift ratio and
// effective mass at every position.
func benchmarkSweep(b *testing.B, m Machine) {
	sweep := sweeper(b, m)
	b.ReportAllocs()
	for b.Loop() {
		sweep()
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/positions, "ns/position")
}

func BenchmarkLeverSweep(b *testing.B) { benchmarkSweep(b, lever(0.62, 1.05, 60)) }

func BenchmarkFourBarSweep(b *testing.B) { benchmarkSweep(b, nortonFourBar(40*planar.Degree)) }

func BenchmarkFourBarWithFrictionSweep(b *testing.B) {
	benchmarkSweep(b, rubbed(nortonFourBar(40*planar.Degree)))
}

func BenchmarkFourBarCamStackSweep(b *testing.B) { benchmarkSweep(b, camOnRocker()) }

func BenchmarkFourBarTracedCamStackSweep(b *testing.B) { benchmarkSweep(b, tracedCamOnRocker(b)) }

func BenchmarkWattSweep(b *testing.B) { benchmarkSweep(b, wattI(75*planar.Degree)) }

func BenchmarkStephensonSweep(b *testing.B) { benchmarkSweep(b, stephensonIII(75*planar.Degree)) }

func BenchmarkStephensonByItsOutputSweep(b *testing.B) { benchmarkSweep(b, byOutput()) }

func BenchmarkTackleWithFrictionSweep(b *testing.B) {
	benchmarkSweep(b, rubbed(tackle(4, 80, RopeLoss{})))
}

// tracedCamOnRocker is the four-bar whose cam was traced at 24 points.
func tracedCamOnRocker(tb testing.TB) Machine {
	points := make([]vec, 24)
	for i := range points {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(len(points)))
		points[i] = vec{X: 0.15*cos + 0.01, Y: 0.1 * sin}
	}
	cam, err := planar.TracedThrough(points)
	if err != nil {
		tb.Fatal(err)
	}
	m := camOnRocker()
	m.Ropes[0].Route[0].Outline = cam
	return m
}

// ratioOf times both functions in turns within the same run, so that what else
// the computer does weighs on both alike.
func ratioOf(b *testing.B, a, base func()) float64 {
	var ta, tb time.Duration
	for b.Loop() {
		start := time.Now()
		for range 8 {
			a()
		}
		middle := time.Now()
		for range 8 {
			base()
		}
		ta, tb = ta+middle.Sub(start), tb+time.Since(middle)
	}
	return float64(ta) / float64(tb)
}

// BenchmarkCamStackOverFourBar: how many times as long the sweep takes with a
// cam and a stack.
func BenchmarkCamStackOverFourBar(b *testing.B) {
	four := sweeper(b, nortonFourBar(40*planar.Degree))
	b.Run("oval", func(b *testing.B) {
		b.ReportMetric(ratioOf(b, sweeper(b, camOnRocker()), four), "times-four-bar")
	})
	b.Run("traced", func(b *testing.B) {
		b.ReportMetric(ratioOf(b, sweeper(b, tracedCamOnRocker(b)), four), "times-four-bar")
	})
}

// closedForm is what one would write by hand for Norton's four-bar alone:
// position by two angles, velocity ratios, and the crank torque of gravity; no
// reactions, no effective mass, no other machine.
func closedForm(theta2 float64) float64 {
	const a, b, c, d = 0.4, 1.2, 0.8, 1.0
	sin2, cos2 := math.Sincos(theta2)
	ax, ay := a*cos2, a*sin2
	dx, dy := d-ax, -ay
	l2 := dx*dx + dy*dy
	l := math.Sqrt(l2)
	e := (l2 + b*b - c*c) / (2 * l)
	h := math.Sqrt(b*b - e*e)
	ux, uy := dx/l, dy/l
	bx, by := ax+e*ux-h*uy, ay+e*uy+h*ux
	cos3, sin3 := (bx-ax)/b, (by-ay)/b
	cos4, sin4 := (bx-d)/c, by/c
	sin43 := sin4*cos3 - cos4*sin3
	omega3 := a / b * (sin2*cos4 - cos2*sin4) / sin43
	omega4 := a / c * (sin2*cos3 - cos2*sin3) / sin43
	load := 0.7*cos3 - 0.2*sin3
	return Gravity * (2*ax/2 + 6*(ax+omega3*b/2*cos3) + 4*omega4*c/2*cos4 + 50*(ax+omega3*load))
}

func TestClosedFormOfTheBenchmark(t *testing.T) {
	// The yardstick itself, against the published torques.
	near(t, "torque at 40 deg, N·m", closedForm(float64(40*planar.Degree)), 120.737979215259, 1e-11)
	near(t, "torque at 100 deg, N·m", closedForm(float64(100*planar.Degree)), -8.94809753549, 1e-11)
}

// BenchmarkFourBarOverClosedForm: how many times as long the general solver
// takes as the few lines written by hand for this one machine and this one
// number.
func BenchmarkFourBarOverClosedForm(b *testing.B) {
	sum := 0.0
	byHand := func() {
		for i := range positions {
			sum += closedForm(float64(planar.Angle(40+0.6*float64(i)) * planar.Degree))
		}
	}
	b.ReportMetric(ratioOf(b, sweeper(b, nortonFourBar(40*planar.Degree)), byHand), "times-by-hand")
	if sum == 0 {
		b.Fatal("nothing was computed")
	}
}

// BenchmarkPerturbedSweeps is what an error band by sampling costs: 2000
// four-bars, each a few millimetres off, compiled and swept on all cores.
func BenchmarkPerturbedSweeps(b *testing.B) {
	const samples = 2000
	r := rand.New(rand.NewPCG(3, 3))
	machines := make([]Machine, samples)
	for i := range machines {
		machines[i] = onPoints(nortonFourBar(40*planar.Degree), func(p vec) vec {
			return p.Add(vec{X: 0.003 * r.NormFloat64(), Y: 0.003 * r.NormFloat64()})
		})
	}
	for b.Loop() {
		var wait sync.WaitGroup
		workers := runtime.GOMAXPROCS(0)
		for w := range workers {
			wait.Go(func() {
				for i := w; i < samples; i += workers {
					md, err := Compile(machines[i])
					if err != nil {
						b.Error(err)
						return
					}
					if _, err := md.Sweep(positions); err != nil {
						b.Error(err)
						return
					}
				}
			})
		}
		wait.Wait()
	}
	b.ReportMetric(b.Elapsed().Seconds()/float64(b.N), "s/2000-sweeps")
}

func BenchmarkCompile(b *testing.B) {
	for _, c := range []classic{
		{"four-bar", nortonFourBar(40 * planar.Degree)},
		{"Watt", wattI(75 * planar.Degree)},
		{"four-bar-cam-stack", camOnRocker()},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Compile(c.m); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// TestSweepAllocatesNothing: no allocation per position, and none per sweep.
func TestSweepAllocatesNothing(t *testing.T) {
	for _, c := range classics() {
		md := mustCompile(t, rubbed(c.m))
		sw := md.NewSweep(11)
		if n := testing.AllocsPerRun(5, func() {
			if err := md.SweepInto(sw); err != nil {
				t.Fatal(err)
			}
		}); n != 0 {
			t.Errorf("%s: %g allocations a sweep, want none", c.name, n)
		}
	}
}
