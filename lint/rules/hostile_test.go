package rules

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
)

// hostile are texts that would take forever if every trial were made.
func hostile() map[string]string {
	const parts = "anchor head\nload litter\nhauler team\npulley top on head holds litter\nhitch grab\npulley runner on grab\nrope long\n"
	var rigs, claims, spare, losses strings.Builder
	for i := range 400 {
		fmt.Fprintf(&rigs, "rig r%d\n%sreeve long: litter / top \\ grab \\ runner / team\n", i, parts)
	}
	claims.WriteString(parts + "reeve long: litter / grab / top \\ runner / team\n")
	losses.WriteString(tackle(100, false))
	for i := range 3000 {
		fmt.Fprintf(&claims, "anchor a%d\naccept unused-part at a%d because \"x\"\nexpect finding jammed\n", i, i)
		fmt.Fprintf(&losses, "expect not held without top%d\n", i%50)
	}
	spare.WriteString(parts + "reeve long: litter / grab / top \\ runner / team\n")
	for i := range 500 {
		fmt.Fprintf(&spare, "sling s%d\nreeve s%d: grab / runner\n", i, i)
	}
	return map[string]string{
		"many wrong rigs": rigs.String(), "many claims": claims.String(), "many losses": losses.String(),
		"many idle lines": spare.String(), "a long wrong rope": tackle(150, true),
		"many redirects": parts + "reeve long: litter / grab" + strings.Repeat(` / top \ top`, 400) + " / team\n",
	}
}

func TestHostileTextsEnd(t *testing.T) {
	for name, text := range hostile() {
		t.Run(name, func(t *testing.T) {
			start := time.Now()
			examined(text)
			assert.Less(t, time.Since(start), 30*time.Second)
			t.Log(time.Since(start))
		})
	}
}
