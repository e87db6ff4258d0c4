"""What covers the joints: casings, stool and apron, sills, returns, flashing."""
