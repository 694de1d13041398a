"""Programmes against general libraries: critical paths by networkx, percentiles by numpy, the spread by a run of chance
of its own (numpy, scipy), and the calendar file by icalendar. Reads JSON lines; says what differs and fails."""

import datetime
import json
import sys

import icalendar
import networkx
import numpy
from scipy import stats

# Sums of the same figures in another order, working days.
ROUNDING = 1e-6
# Runs of the simulation here. With 2000 runs there and these, a percentile moves by some tenths of a day.
RUNS = 20_000
# Working days: four times the spread of a tenth percentile of 2000 runs of the example.
APART = 0.6


def longest(net, after):
    """Early starts, floats and the end of a network, by longest paths."""
    graph = networkx.DiGraph()
    count = len(net)
    for step in range(count):
        graph.add_edge("start", step, weight=0.0)
        graph.add_edge(step, "end", weight=net[step])
        for before in after[step]:
            graph.add_edge(before, step, weight=net[before])
    order = list(networkx.topological_sort(graph))
    early = {node: 0.0 for node in order}
    for node in order:
        for _, there, data in graph.out_edges(node, data=True):
            early[there] = max(early[there], early[node] + data["weight"])
    end = networkx.dag_longest_path_length(graph)
    assert abs(end - early["end"]) < ROUNDING
    late = {node: end for node in order}
    for node in reversed(order):
        for before, _, data in graph.in_edges(node, data=True):
            late[before] = min(late[before], late[node] - data["weight"])
    return [early[k] for k in range(count)], [late[k] - early[k] for k in range(count)], end


def networks(lines):
    steps = 0
    for line in lines:
        ours = json.loads(line)
        early, floats, end = longest(ours["net"], ours["after"])
        assert abs(end - ours["end"]) < ROUNDING, (end, ours["end"])
        numpy.testing.assert_allclose(ours["start"], early, atol=ROUNDING)
        numpy.testing.assert_allclose(ours["float"], floats, atol=ROUNDING)
        steps += len(early)
    return steps


def whole(ours):
    programme = ours["programme"]
    numpy.testing.assert_allclose(programme["spread"]["days"], numpy.percentile(ours["ends"], [10, 50, 90]), rtol=0, atol=1e-9)
    activities = programme["activities"]
    place = {one["phase"]: k for k, one in enumerate(activities)}
    after = [[place[phase] for phase in one["after"]] for one in activities]
    _, floats, end = longest([one["net_days"] for one in activities], after)
    assert abs(end - programme["net_days"]) < ROUNDING, (end, programme["net_days"])
    # Weather does not change which steps are critical here: only the work inside has time to spare.
    assert [k for k, f in enumerate(floats) if f < ROUNDING] == [k for k, one in enumerate(activities) if one["critical"]]
    chance = simulated(programme, activities, after, numpy.array(ours["loss"]))
    theirs = numpy.percentile(chance, [10, 50, 90])
    apart = numpy.abs(theirs - programme["spread"]["days"])
    assert (apart < APART).all(), (theirs, programme["spread"]["days"])
    return theirs, programme["spread"]["days"]


def simulated(programme, activities, after, loss):
    """The end of the work in many runs: hours by triangles, whole days lost."""
    rng = numpy.random.default_rng(20_270_301)
    nets = []
    for one in activities:
        hours = numpy.zeros(RUNS)
        for part in one["parts"]:
            low, likely, high = part["hours"]
            if high > low:
                triangle = stats.triang((likely - low) / (high - low), loc=low, scale=high - low)
                hours += triangle.rvs(RUNS, random_state=rng)
            else:
                hours += likely
        nets.append(hours / (one["people"] * programme["hours_a_day"]))
    ends = numpy.zeros(RUNS)
    for run in range(RUNS):
        dry = numpy.flatnonzero(rng.random(len(loss)) >= loss).astype(float)
        # `worked[k]` of dry time is gone when day k begins; time within dry days only is a plain sum.
        finish = []
        for k, one in enumerate(activities):
            start = max((finish[before] for before in after[k]), default=0.0)
            net = nets[k][run]
            if one["phase"] == "inside":
                finish.append(start + net)
                continue
            gone = numpy.clip(start - dry, 0.0, 1.0).sum()
            total = gone + net
            day = int(numpy.ceil(total)) - 1
            finish.append(dry[day] + (total - day) if net > 0 else start)
        ends[run] = max(finish)
    return ends


def calendar(text, programme):
    """The calendar file is one that a general library reads, with the days that the programme says."""
    read = icalendar.Calendar.from_ical(text)
    assert not read.errors and str(read["VERSION"]) == "2.0"
    events = list(read.walk("VEVENT"))
    for event in events:
        assert not event.errors
        for needed in ("UID", "DTSTAMP", "DTSTART", "DTEND", "SUMMARY"):
            assert needed in event, needed
        assert event["DTSTAMP"].dt.tzinfo is not None
        assert isinstance(event["DTSTART"].dt, datetime.date) and event["DTEND"].dt > event["DTSTART"].dt
    assert len({str(event["UID"]) for event in events}) == len(events)
    inspected = [str(event["DTSTART"].dt) for event in events if str(event["SUMMARY"]).startswith("Inspect")]
    assert inspected == [one["date"] for one in programme["hire"]["inspections"]]
    spans = {str(event["SUMMARY"]).split(":")[0]: (event["DTSTART"].dt, event["DTEND"].dt) for event in events}
    for one in programme["activities"]:
        first, after = spans[one["name"]]
        assert str(first) == one["first"]["date"]
        assert str(after - datetime.timedelta(days=1)) == one["last"]["date"]
    return len(events)


def main():
    first, *rest = sys.stdin.read().splitlines()
    wanted = int(sys.argv[1])
    assert len(rest) == wanted, f"{len(rest)} networks, not {wanted}"
    steps = networks(rest)
    ours = json.loads(first)
    theirs, days = whole(ours)
    events = calendar(ours["ics"], ours["programme"])
    print(f"{wanted} networks of {steps} steps agree; percentiles {days} beside {theirs.tolist()}; {events} events read")


if __name__ == "__main__":
    main()
