"""What `jambs check` says of a house: depths, rips and findings; nothing is written."""

import sys

import jambs

asked = jambs.check(jambs.read_job(sys.argv[1]), "papers")
print(jambs.summary(asked))
