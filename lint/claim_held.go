package lint

import (
	"fairlead/lang/model"
	"fairlead/lint/house"
	"fairlead/solve"
)

// judgeHeld asks whether the load stays up, with a part lost or not, hands off
// unless the claim says otherwise. A drop that the house allows is as good.
func judgeHeld(res *solve.Result, rules *house.Rules, c *model.Claim) Verdict {
	if res.Status == solve.Unsolved {
		return failed(nothingToSolve)
	}
	lost, when := solve.LostOf(res.Rig, c.Of), "hands off"
	if c.Of != nil {
		when = "without " + NameOf(c.Of)
	}
	stay := res.After(lost)
	if c.WhileHauling {
		stay = res.AfterWhileHauling(lost)
		if when += ", hands on the rope"; c.Of == nil {
			when = "hands on the rope"
		}
	}
	held := keeps(rules, stay)
	switch {
	case held == (c.Not == nil):
		return Verdict{Holds: true}
	case held && stay.LoadsStay():
		return failed(when + ", the load is held")
	}
	return Verdict{Message: when + ", " + Fall(res.Rig, stay, "") + allowed(rules, stay), Related: allowance(rules, stay)}
}

// Fall says what happens when a rig does not stay up: "litter falls". When says
// in a clause when that is, such as "when team lets go"; it may be empty.
func Fall(rig *model.Rig, stay solve.Stay, when string) string {
	who := Bodies(stay.Sinking)
	if who == "" {
		who = "the load"
	}
	falls, drops := " falls", " drops"
	if Several(stay.Sinking) {
		falls, drops = " fall", " drop"
	}
	if when != "" {
		when = " " + when
	}
	switch stay.Answer {
	case solve.Held:
		return who + " stays where it is" + when
	case solve.Caught:
		return who + drops + far(rig, stay.Drop, " by an unknown length") + when + " until " + slackOf(stay) + " catches it"
	case solve.Jams:
		return who + drops + far(rig, stay.Drop, "") + when + " until " + meeting(stay)
	}
	return who + falls + when
}

// far says how far the loads drop: " by 0.4 m"; or unknown.
func far(rig *model.Rig, drop *solve.Drop, unknown string) string {
	if !drop.Known() {
		return unknown
	}
	most := " by "
	switch {
	case drop.AtMost:
		most = " by at most "
	case len(drop.Loads) > 1:
		most = " by up to "
	}
	return most + length(rig, *drop.Most())
}

// slackOf names the slack rope that catches.
func slackOf(stay solve.Stay) string {
	var names []string
	for _, s := range stay.Catching {
		names = append(names, StrandName(s.Rope, s.Index))
	}
	if len(names) == 0 {
		return "slack rope"
	}
	return "the slack of " + List(names)
}

// meeting names the parts that meet.
func meeting(stay solve.Stay) string {
	var names []string
	for _, pair := range stay.Meeting {
		if pair[0] != nil && pair[1] != nil {
			names = append(names, NameOf(pair[0])+" meets "+NameOf(pair[1]))
		}
	}
	if len(names) == 0 {
		return "parts meet"
	}
	return List(names)
}
