"""The outside of a whole house, planned from its kits before anything is drawn; what of it the cut sheets say."""
