"""How much wood moves across its grain, species by species."""
