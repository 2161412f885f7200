package lp

// haulChain gives the tension program of "3:1 on 3:1 on …": a load of weight 1, and
// stages in each of which a rope runs from the load side over a hitch to a fixed
// capture, back over a runner that hangs from the hitch, and on to the next
// stage. The columns are the pieces of rope between grips, then the grips' own
// forces; rows are the balance of load and hitches, and of every grip. The aim is
// the largest pull on the last piece that balance allows.
func haulChain(sheaves int) *Program {
	p := &Program{}
	load := p.Row(Int(1))
	from := p.Add(Int(0), Entry{load, Int(1)})
	for range sheaves / 2 {
		hitch, grip, capture := p.Row(Int(0)), p.Row(Int(0)), p.Row(Int(0))
		p.extend(from, Entry{hitch, Int(-1)}, Entry{grip, Int(1)})
		p.Add(Int(0), Entry{grip, Int(-1)})    // the hitch bites
		p.Add(Int(0), Entry{capture, Int(-1)}) // the capture bites
		p.Add(Int(0), Entry{hitch, Int(1)}, Entry{grip, Int(-1)}, Entry{capture, Int(1)})
		from = p.Add(Int(0), Entry{hitch, Int(2)}, Entry{capture, Int(-1)})
	}
	p.Columns[from].Cost = Int(1)
	return p
}

func (p *Program) extend(column int, entries ...Entry) {
	p.Columns[column].Entries = append(p.Columns[column].Entries, entries...)
}
