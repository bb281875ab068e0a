package human

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"steelyard/reference"
)

// known is one dimension given to the survey's normal distribution.
type known struct {
	d      reference.Dimension
	score  float64 // see reference.Score
	spread float64 // one standard deviation of the measuring, in score units
}

// condition returns mean and standard deviation (normal scores) of every
// dimension of the women or men of the survey among whom the given dimensions
// have the given values.
//
// With g the given and r the remaining dimensions of a normal distribution of
// mean μ and covariance Σ, and S the diagonal of squared measuring spreads,
//
//	K = Σrg·(Σgg + S)⁻¹,   μr' = μr + K·(xg - μg),   Σrr' = Σrr - K·Σgr
//
// Source: the conditional of a multivariate normal, Anderson T W, An
// Introduction to Multivariate Statistical Analysis, 3rd ed., section 2.5,
// from memory. Accuracy: as good as the assumption that the survey is jointly
// normal, which its percentiles bear out for lengths within 3 mm.
func condition(sex reference.Sex, given []known) (mean, sd reference.Dimensions) {
	mean, cov := reference.SurveyOf(sex).Normal()
	for d := range sd {
		sd[d] = math.Sqrt(cov[d][d])
	}
	n := len(given)
	if n == 0 {
		return mean, sd
	}
	gg := mat.NewSymDense(n, nil)
	away := mat.NewVecDense(n, nil)
	for i, a := range given {
		for j, b := range given {
			gg.SetSym(i, j, cov[a.d][b.d])
		}
		gg.SetSym(i, i, cov[a.d][a.d]+a.spread*a.spread)
		away.SetVec(i, a.score-mean[a.d])
	}
	var chol mat.Cholesky
	if !chol.Factorize(gg) {
		panic("human: the survey's covariance is not positive definite")
	}
	row, gain := mat.NewVecDense(n, nil), mat.NewVecDense(n, nil)
	for d := range mean {
		for i, g := range given {
			row.SetVec(i, cov[d][g.d])
		}
		if err := chol.SolveVecTo(gain, row); err != nil {
			panic(err) // only when singular, excluded above
		}
		mean[d] += mat.Dot(gain, away)
		sd[d] = math.Sqrt(max(0, cov[d][d]-mat.Dot(gain, row)))
	}
	return mean, sd
}
