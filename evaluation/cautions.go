package evaluation

// usual is what every result carries, whatever the machine.
var usual = [...]string{
	"This is a model of a measured machine, not a measurement of its safety.",
	"Start light and stop at pain. Pain or injury goes to a licensed professional.",
	"Keep to the machine maker's manual and to local rules; where they differ from this page, they count.",
	"A changed or built machine needs a competent engineer, guards, stops and a load test to the applicable standard before anyone gets in.",
}

// PersonCaution is what every result for a person carries besides.
const PersonCaution = "A predicted load is no target: come up to it in small steps, with safety stops or a spotter, and never into pain or past a joint's range."

// Cautions returns the sheet's own cautions, that for a person, and the usual
// ones.
func (e *Evaluation) Cautions() []string {
	all := append([]string{}, e.Sheet.Cautions...)
	if e.Person != nil {
		all = append(all, PersonCaution)
	}
	return append(all, usual[:]...)
}
