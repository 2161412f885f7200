package lint

import (
	"fairlead/lang/model"
	"fairlead/solve"
)

// judgeHeld asks whether the load stays up, hands off, or with a part lost.
func judgeHeld(res *solve.Result, c *model.Claim) Verdict {
	if c.WhileHauling {
		return Verdict{Missing: "what holds while hands are on the rope"}
	}
	if res.Status == solve.Unsolved {
		return failed("the rig has no load or no rope to compute with")
	}
	stay, when := res.Released, "hands off"
	if c.Of != nil {
		stay, when = res.Without(c.Of), "without "+NameOf(c.Of)
	}
	held := stay.Answer == solve.Held
	switch {
	case held == (c.Not == nil):
		return Verdict{Holds: true}
	case held:
		return failed(when + ", the load is held")
	}
	return failed(when + ", " + Fall(stay, ""))
}

// Fall says what happens when a rig does not stay up: "litter falls". When says
// in a clause when that is, such as "when team lets go"; it may be empty.
func Fall(stay solve.Stay, when string) string {
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
		return who + drops + " by an unknown length" + when + " until " + slackOf(stay) + " catches it"
	case solve.Jams:
		return who + drops + when + " until " + meeting(stay)
	}
	return who + falls + when
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
