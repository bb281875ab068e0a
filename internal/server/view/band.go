package view

import (
	"steelyard/evaluation"
	"steelyard/internal/server/api"
	"steelyard/profile"
)

// firstOrder returns the linear band; nil if no number has a ±. The words may
// speak of it if it is that of lifting.
func firstOrder(e *evaluation.Evaluation) (*api.Band, error) {
	b, err := e.Linear()
	if err != nil || b == nil {
		return nil, err
	}
	if b.Phase == profile.Lifting {
		e.Band = b
	}
	return band(e, b), nil
}

// phases names the phases as the page does.
var phases = map[profile.Phase]api.Phase{profile.Holding: api.Holding, profile.Lifting: api.Lifting, profile.Lowering: api.Lowering}

func band(e *evaluation.Evaluation, b *profile.Band) *api.Band {
	out := &api.Band{Phase: phases[b.Phase], Sampled: b.Draws > 0, Draws: b.Draws, Failed: b.Failed, Ranges: map[string]api.Range{},
		Low: []*float64{}, High: []*float64{}}
	for k, in := range b.Between {
		has := e.Curve.Has(k)
		out.Low, out.High = append(out.Low, known(has, newtons(in.Low))), append(out.High, known(has, newtons(in.High)))
	}
	for _, q := range profile.All() {
		in := b.Reading(q)
		out.Ranges[q.String()] = api.Range{Low: share(in.Low), High: share(in.High)}
	}
	if n, ok := b.Dominant(); ok {
		out.Narrow = &api.Narrowing{Name: n.Measurement.Name, Share: share(n.Share), Half: newtons(n.Half), Without: newtons(n.Without)}
		for _, m := range e.Built.Measurements {
			if m.Name == n.Measurement.Name {
				out.Narrow.Path = m.Path
			}
		}
	}
	return out
}
