"""What stands between ganged units."""
