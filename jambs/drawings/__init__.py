"""Shop drawings of openings: DXF for CAD, SVG for the cut sheet. The only room that knows ezdxf."""
