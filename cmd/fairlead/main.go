// Command fairlead reads haul rigs written in plain text, solves them and finds
// their faults.
package main

import (
	"os"

	"fairlead/cmd/internal/cli"
)

func main() { os.Exit(cli.Run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }
