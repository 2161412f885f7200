package seeding_test

import "strings"

// excuse says of harmful faults why nothing finds them. What is empty stands for any;
// worse is a part of what the fault makes worse.
type excuse struct{ kind, rig, done, worse, reason string }

// excuses explain every harmful fault that is missed: for each thing that it makes worse
// one of them must fit.
var excuses = []*excuse{
	{worse: "without the ", reason: "a knot stops the load within the drop that the house allows, or the author accepts that one loss lets it fall"},
	{rig: "roof-seat", worse: " cannot pull so much", reason: "what people give who hang on the rope is not known: the usual figure is for those who stand"},
	{worse: " cannot lower it", reason: "it is asked where people hang on the load or something can be opened, and another line may lower it"},
	{worse: "friction leaves ", reason: "friction is told of hardware that could be better or elsewhere, and what holds stays where it is"},
	{worse: "the anchors carry ", reason: "that a lost belay loads the anchors is for the rules about losses"},
	{rig: "twin-teams", worse: "raises-nothing", reason: "one of the two teams still raises the load, as a team that only steers may leave to another"},
}

// excused gives the excuses for all that a fault makes worse; nil if one lacks.
func excused(tr *trial) []*excuse {
	fits := func(want, is string) bool { return want == "" || want == is }
	var list []*excuse
	for _, line := range tr.change.Worse {
		found := false
		for _, e := range excuses {
			if fits(e.kind, tr.Kind.Name) && fits(e.rig, tr.rig) && fits(e.done, tr.Done) && strings.Contains(line, e.worse) {
				list, found = append(list, e), true
				break
			}
		}
		if !found {
			return nil
		}
	}
	return list
}
