"""All papers of a house in one call, as `jambs build` writes them."""

import sys

import jambs

job = jambs.read_job(sys.argv[1])
papers = jambs.build(job, "papers", with_solids=False)
print(len(papers), "papers; all of them are there:", all(paper.is_file() for paper in papers))
