# Solves least-squares problems with amounts that are not negative, read as JSON from
# the input, with scipy's two solvers; prints for each the length that is left of every
# gap and how long one solution took, in seconds.
import json, sys, time
import numpy, scipy.optimize

problems = [(numpy.array(p["parts"]).T, numpy.array(p["gap"])) for p in json.load(sys.stdin)]
solvers = {
    "nnls": lambda a, b: scipy.optimize.nnls(a, b)[0],
    "lsq_linear": lambda a, b: scipy.optimize.lsq_linear(a, b, bounds=(0, numpy.inf), method="bvls", tol=1e-12).x,
}
answer = {}
for name, solve in solvers.items():
    begun = time.perf_counter()
    amounts = [solve(a, b) for a, b in problems]
    took = (time.perf_counter() - begun) / len(problems)
    answer[name] = {"left": [float(numpy.linalg.norm(a @ x - b)) for (a, b), x in zip(problems, amounts)], "seconds": took}
json.dump(answer, sys.stdout)
