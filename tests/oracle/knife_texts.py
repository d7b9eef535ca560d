"""Logs of the Heron as files have them, in every format."""

from __future__ import annotations

from pathlib import Path

import backspring as bs

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON = bs.load(DESIGNS / "heron.toml")
OLD = f"""backspring fitting log,2,Heron,{HERON.shape_sha256}
what,state,half_stop_mm,closed_mm,repeatability_mm,face,depth_mm
measured,loaded,0.3,0.31,0.002,,
ground,,,,,half_stop,0.1
end,2
"""
GOOD = f"""backspring fitting log,3,Heron,{HERON.shape_sha256}
what,state,half_stop_mm,closed_mm,repeatability_mm,face,depth_mm,from_mm,to_mm,value,station_mm,weight_n
measured,loaded,0.3,0.31,0.002,,,,,,,
ground,,,,,half_stop,0.1,,,,,
end,2
"""
MORE = """ground,,,,,half_stop,,,,,,
ground,,,,,back,,-30.0,36.5,,,
moved_mm,,,,,,,,,0.3,32.0,19.6
thickness_mm,,,,,,,,,3.2,5.0,
pull_n,,,,,,,,,15.0,,
"""
BY_NAME = OLD.replace(f"log,2,Heron,{HERON.shape_sha256}", "log,1,Heron")


LONG = GOOD.replace("end,2\n", f"{MORE}end,7\n")
