package mechanism

import (
	"fmt"
	"math"
	"sort"
)

// Tempo is how long each part of a repetition takes, in seconds.
type Tempo struct {
	Up, Top, Down, Bottom float64
}

// Stroke is one repetition in time: columns of equal length.
type Stroke struct {
	Time   []float64 // s
	Travel []float64 // m along the contact's path
	Speed  []float64 // m/s, positive towards the end of the travel
	Force  []float64 // N at the contact along its path
	Static []float64 // N, what the same place takes in the same sense at rest
	Leaves []bool    // the body would have to hold the machine back: the load flies
	Slack  []string  // the rope that would go slack, or ""
	Sense  []Sense

	Peak, Dip int // rows of the greatest and the least force
}

// smooth is the fastest-starting smooth rise from 0 to 1: its value, first and
// second derivative at t in [0, 1], with no speed and no acceleration at either
// end. Source: the minimum-jerk course, T. Flash and N. Hogan, "The coordination
// of arm movements", J Neurosci 5 (1985) 1688 (from memory).
func smooth(t float64) (x, v, a float64) {
	return t * t * t * (10 + t*(6*t-15)), 30 * t * t * (1 - t) * (1 - t), 60 * t * (1 - t) * (1 - 2*t)
}

// Stroke plays one repetition at the tempo over the sweep's travel, n ≥ 8 rows
// in all. Inertia and damping act besides the static loads and, where there is
// any, friction. The whole travel must be free of gaps.
func (md *Model) Stroke(sw *Sweep, tempo Tempo, n int) (*Stroke, error) {
	if n < 8 {
		return nil, fmt.Errorf("tempo: %d rows are too few to show a repetition; ask for at least 8", n)
	}
	total := tempo.Up + tempo.Top + tempo.Down + tempo.Bottom
	for _, t := range []float64{tempo.Up, tempo.Top, tempo.Down, tempo.Bottom} {
		if !(t >= 0 && t <= 60) {
			return nil, fmt.Errorf("tempo: %g s is outside 0 to 60 s; give the seconds up, pause, down, pause", t)
		}
	}
	if tempo.Up < 0.1 || tempo.Down < 0.1 {
		return nil, fmt.Errorf("tempo: %g s up and %g s down; each takes at least 0.1 s", tempo.Up, tempo.Down)
	}
	for _, stop := range sw.Stops {
		if stop != nil {
			return nil, stop
		}
	}
	r := &Stroke{}
	st := md.NewState()
	for i := range n {
		t := total * float64(i) / float64(n-1)
		if err := r.row(st, sw, t, tempo); err != nil {
			return nil, err
		}
	}
	r.Peak, r.Dip = extremes(r.Force)
	return r, nil
}

// row adds the row at time t.
func (r *Stroke) row(st *State, sw *Sweep, t float64, tempo Tempo) error {
	whole := sw.Travel[sw.Len()-1]
	x, v, a, sense := tempo.course(t)
	s, speed, accel := whole*x, whole*v, whole*a
	if err := st.MoveTo(sw.driverAt(s)); err != nil {
		return err
	}
	_, _, perDriver := st.path()
	mo := motion{rate: speed * st.model.forward / perDriver}
	mo.accel = (accel*st.model.forward - st.pathSlope()*mo.rate*mo.rate) / perDriver
	static, err := st.Force(sense)
	if err != nil {
		return err
	}
	f, err := st.force(sense, mo)
	if err != nil {
		return err
	}
	slack := ""
	if stop := st.Slack(sense); stop != nil {
		slack = stop.Part
	}
	r.Time, r.Travel, r.Speed = append(r.Time, t), append(r.Travel, s), append(r.Speed, speed)
	r.Force, r.Static, r.Sense = append(r.Force, f), append(r.Static, static), append(r.Sense, sense)
	r.Leaves, r.Slack = append(r.Leaves, f < 0 && static >= 0), append(r.Slack, slack)
	return nil
}

// course returns the share of the travel at time t, and its rates per second.
func (p Tempo) course(t float64) (x, v, a float64, sense Sense) {
	switch {
	case t < p.Up:
		x, v, a = smooth(t / p.Up)
		return x, v / p.Up, a / (p.Up * p.Up), Lift
	case t < p.Up+p.Top:
		return 1, 0, 0, Hold
	case t < p.Up+p.Top+p.Down:
		x, v, a = smooth((t - p.Up - p.Top) / p.Down)
		return 1 - x, -v / p.Down, -a / (p.Down * p.Down), Lower
	}
	return 0, 0, 0, Hold
}

// driverAt returns the driver coordinate at travel s, by the cubic through both
// neighbours with the slope of the path there.
func (sw *Sweep) driverAt(s float64) float64 {
	n := sw.Len()
	i := sort.SearchFloat64s(sw.Travel, s)
	i = min(max(i, 1), n-1)
	h := sw.Travel[i] - sw.Travel[i-1]
	if h == 0 {
		return sw.Driver[i]
	}
	t := math.Min(1, math.Max(0, (s-sw.Travel[i-1])/h))
	forward := math.Copysign(1, sw.Driver[i]-sw.Driver[i-1])
	d0, d1 := forward*h/sw.speed[i-1], forward*h/sw.speed[i]
	u := 1 - t
	return sw.Driver[i-1]*u*u*(1+2*t) + d0*t*u*u + sw.Driver[i]*t*t*(3-2*t) - d1*t*t*u
}

func extremes(f []float64) (most, least int) {
	for i := range f {
		if f[i] > f[most] {
			most = i
		}
		if f[i] < f[least] {
			least = i
		}
	}
	return most, least
}
