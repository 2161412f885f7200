package lint

import "fairlead/lang/diag"

// tally counts findings by rule and subject: edits move places and change the
// figures in messages.
type tally struct{ counts map[kind]int }

type kind struct {
	rule, subject string
	severity      diag.Severity
}

func newTally(list []diag.Diagnostic) *tally {
	t := &tally{counts: map[kind]int{}}
	for _, d := range list {
		t.counts[kind{d.Rule, d.Subject, d.Severity}]++
	}
	return t
}

// add counts the findings of another tally too.
func (t *tally) add(other *tally) {
	for k, n := range other.counts {
		t.counts[k] += n
	}
}

// has says whether a finding of the same rule about the same part is counted, at
// any severity.
func (t *tally) has(d diag.Diagnostic) bool {
	for k := range t.counts {
		if k.rule == d.Rule && k.subject == d.Subject {
			return true
		}
	}
	return false
}

// worseThan says whether there are more findings of some kind, at least as grave
// as the severity, than in another tally. Moved gives the subjects there whose findings
// may be about another one here.
func (t *tally) worseThan(before *tally, severity diag.Severity, moved map[string]string) bool {
	for k, n := range t.counts {
		was := before.counts[k]
		if from, there := moved[k.subject]; there {
			was = max(was, before.counts[kind{k.rule, from, k.severity}])
		}
		if k.severity >= severity && n > was {
			return true
		}
	}
	return false
}
