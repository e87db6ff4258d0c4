"""What the boards of a house cost, and the bound that no plan can be under."""

import sys

import jambs

job = jambs.read_job(sys.argv[1])
for one in jambs.plan_stock(jambs.make_kits(job), job, seconds=2):
    plan = one.plan
    cost, bound = plan.cost_cents / 100, plan.bound.best_cents / 100
    print(f"{one.lot.title}: {len(plan.boards)} boards, {cost:.2f}, not under {bound:.2f}")
