package human

import (
	"math/rand/v2"

	"gonum.org/v1/gonum/mat"

	"steelyard/reference"
)

// Drawn is one invented person of the survey's population.
type Drawn struct {
	Sex  reference.Sex
	Size reference.Dimensions // m; kg for Mass
}

// Sampler draws bodies from the survey's means and covariances: jointly normal
// lengths and log-normal mass. Like the survey they are soldiers of 17 to 58
// years, not a general population.
type Sampler struct {
	halves []normal
	next   int
	random *rand.Rand
}

// normal is the distribution of one half of the survey.
type normal struct {
	sex    reference.Sex
	mean   reference.Dimensions
	factor [reference.NumDimensions]reference.Dimensions // lower triangle L, covariance = L·Lᵀ
}

// NewSampler returns a sampler of women, of men, or, for Unstated, of women and
// men in turn. The same seed draws the same people on every machine.
func NewSampler(sex reference.Sex, seed uint64) *Sampler {
	s := &Sampler{random: rand.New(rand.NewPCG(seed, uint64(sex)))}
	for _, half := range sex.Halves() {
		s.halves = append(s.halves, newNormal(half))
	}
	return s
}

func newNormal(sex reference.Sex) normal {
	n := normal{sex: sex}
	mean, cov := reference.SurveyOf(sex).Normal()
	n.mean = mean
	sym := mat.NewSymDense(int(reference.NumDimensions), nil)
	for i := range cov {
		for j := range i + 1 {
			sym.SetSym(i, j, cov[i][j])
		}
	}
	var chol mat.Cholesky
	if !chol.Factorize(sym) {
		panic("human: the survey's covariance is not positive definite")
	}
	var lower mat.TriDense
	chol.LTo(&lower)
	for i := range n.factor {
		for j := range i + 1 {
			n.factor[i][j] = lower.At(i, j)
		}
	}
	return n
}

// Draw returns the next person.
func (s *Sampler) Draw() Drawn {
	n := &s.halves[s.next]
	s.next = (s.next + 1) % len(s.halves)
	var z reference.Dimensions
	out := Drawn{Sex: n.sex}
	for i := range z {
		z[i] = s.random.NormFloat64()
		v := n.mean[i]
		for j := range i + 1 {
			v += n.factor[i][j] * z[j]
		}
		out.Size[i] = reference.Unscore(reference.Dimension(i), v)
	}
	return out
}

// Body returns the person as a body, with the given ranges of motion and de
// Leva's segments. Age and strength are those of a person not asked.
func (d Drawn) Body(r Ranges) *Body {
	b := &Body{Person: Person{Height: d.Size[reference.Stature], Mass: d.Size[reference.Mass], Sex: d.Sex}, Ranges: r}
	for i, v := range d.Size {
		b.Size[i] = Estimate{Value: v, Origin: Given, Source: drawnSource}
	}
	b.derive()
	return b
}

var drawnSource = reference.Source{Text: "drawn from the survey's means and covariances", Mark: reference.Computed}
