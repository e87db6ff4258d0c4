"""The buying list and the cutting plan in the folder `cutting` of the papers, and what they say."""

import sys

import jambs

job = jambs.read_job(sys.argv[1])
plan = jambs.buy(job, "papers", seconds=1)
for line in plan["buying"]["lines"]:
    print(line["buy"], "×", line["sold_as"])
print("with spares:", plan["buying"]["cost"]["text"])
