"""Sheet metal at head and sill: blanks with their bends, the order of laps, and whether they shed water."""
