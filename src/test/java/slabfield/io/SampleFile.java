package slabfield.io;

/** A file that uses every key, and a short one that uses only what must be there. */
final class SampleFile {
    private SampleFile() {}

    static final String SHORT = """
            {
              "slabfield": 1,
              "name": "House",
              "lengthUnit": "m",
              "slabs": [{ "id": "basement", "outline": [[0, 0], [10, 0], [10, 8], [0, 8]] }],
              "layer": { "fill": "sand" }
            }
            """;

    static final String FULL = """
            {
              "slabfield": 1,
              "name": "Everything",
              "teaches": "Every key.",
              "notes": "Invented.",
              "lengthUnit": "ft",
              "display": { "pressure": "inH2O", "flow": "L/min", "length": "ft" },
              "cell": "6 in",
              "slabs": [
                { "id": "main", "outline": [[0, 0], [40.5, 0], [40.5, 28], [0, 28]], "holes": [[[0, 0], [3, 0], [3, 4], [0, 4]]],
                  "thickness": "3 1/2 in", "treated": true },
                { "id": "garage", "outline": [[40.5, 0], [60, 0], [60, 20], [40.5, 20]], "treated": false }
              ],
              "layer": {
                "fill": "mixed", "permeability": "3e-9 m2", "inertial": "12 1/m", "thickness": "5 in",
                "zones": [
                  { "id": "stone", "outline": [[10, 10], [20, 10], [20, 20], [10, 20]], "fill": "clean stone" },
                  { "id": "tested", "outline": [[20, 10], [25, 10], [25, 20], [20, 20]], "permeability": "1e-9 m2", "thickness": "2 in", "inertial": "3 1/m" },
                  { "id": "hollow", "outline": [[30, 20], [32, 20], [32, 22], [30, 22]], "fill": "void", "thickness": "1/2 in" }
                ]
              },
              "barriers": [
                { "id": "footing", "path": [[40.5, 0], [40.5, 20]], "width": "16 in", "permeability": "0 m2", "certainty": "suspected",
                  "gaps": [{ "at": [40.5, 10], "length": "3 ft" }] },
                { "id": "beam", "path": [[8, 5], [8, 20]], "width": "12 in", "permeability": "1e-12 m2" }
              ],
              "drainTile": [
                { "id": "loop", "path": [[1, 5], [39, 5], [39, 27], [1, 27], [1, 5]], "diameter": "3 in", "manning": 0.015, "slots": "1 in2/ft",
                  "breaks": [{ "at": [20, 5] }, { "at": [30, 27], "length": "2 ft" }], "waterFilled": [{ "at": [1, 20], "length": "4 ft" }], "sump": "sump" },
                { "id": "stub", "path": [[10, 5], [10, 9]] }
              ],
              "blockWalls": [
                { "id": "north", "path": [[0, 28], [40.5, 28]], "height": "8 ft", "tops": { "state": "covered", "sealedFraction": 0.85, "area": "0.08 m2/m" },
                  "joint": "2e-4 m3/s/Pa/m", "faceToRoom": "3e-5 m/s/Pa", "faceToOutdoors": "1e-6 m/s/Pa", "along": "2e-3 m4/s/Pa", "joinsAtCorners": false,
                  "tile": { "id": "loop", "conductance": "1e-5 m3/s/Pa/m" } },
                { "id": "south", "path": [[3, 0], [40.5, 0]] }
              ],
              "openings": [
                { "id": "sump", "kind": "sump", "at": [38, 25], "radius": "9 in", "area": "40 in2", "dischargeCoefficient": 0.6, "state": "sealed", "sealedFraction": "95 %" },
                { "id": "joint", "kind": "joint", "perimeterOf": "main", "width": "1 mm", "bends": 1, "state": "loose" },
                { "id": "crack", "kind": "crack", "path": [[12, 6], [14, 12], [14.5, 25]], "width": "0.3 mm" },
                { "id": "slot", "path": [[30, 6], [36, 6]], "area": "2 in2" },
                { "id": "chase", "kind": "penetration", "at": [25, 25], "radius": "4 in", "leak": { "coefficient": "0.5 cfm/Pa^n", "exponent": 0.65 } },
                { "id": "pipe", "at": [6, 24], "area": "3 in2" }
              ],
              "soil": { "leakance": "1e-8 m/s/Pa" },
              "house": {
                "pressureOutdoorsAtFloor": "-1.5 Pa", "indoorTemperature": "21 C", "neutralLevel": "12 ft",
                "blowerDoor": { "flow": "1500 cfm", "pressure": "49 Pa", "exponent": 0.62 }, "naturalFlow": "60 cfm",
                "exhausts": [{ "id": "dryer", "flow": "150 cfm" }, { "id": "bath", "flow": "50 cfm" }],
                "designDay": { "outdoorTemperature": "-4 F", "windSpeed": "4 m/s", "windCoefficient": 0.3 },
                "climate": { "bins": [["-10 C", "240 h"], ["0 C", "30 d"]], "degreeDays": "5400 F d", "balance": "60 F" },
                "limits": [{ "pressure": "2 Pa", "source": "the inspector's, for the water heater" }],
                "heating": { "fuel": "oil", "efficiency": "80 %", "price": 3.5, "fuelUnit": "gal", "energyPerUnit": "106000 Btu" },
                "tariff": { "currency": "XYZ", "electricityPerKwh": 0.114 }
              },
              "air": { "temperature": "54 F", "altitude": "300 m" },
              "suctionPoints": [
                { "id": "S1", "at": [5, 14], "pit": { "radius": "9 in" }, "source": { "pressure": "-1 inH2O" } },
                { "id": "S2", "at": [30, 14], "pit": { "volume": "1 ft3" }, "source": { "flow": "40 cfm" }, "whenOff": "open" },
                { "id": "S3", "at": [39, 14], "tile": "loop",
                  "source": { "fan": [["0 cfm", "1.5 inH2O"], ["60 cfm", "1.1 inH2O"], ["120 cfm", "0 inH2O"]],
                              "pipe": { "diameter": "4 in", "length": "30 ft", "ells": 4, "fittings": 2, "roughness": "0.01 mm" }, "discharge": "-2 Pa" } },
                { "id": "S4", "at": [10, 24], "source": { "fan": [["0 cfm", "1.5 inH2O"], ["120 cfm", "0 inH2O"]] } },
                { "id": "S5", "at": [33, 8], "source": { "riser": "R", "pipes": [
                  { "nominal": "2 in", "length": "3 ft", "rise": "2 ft", "halfElls": 2, "fittings": 0.5, "valve": 1.5 },
                  { "nominal": "3 in", "length": "10 ft", "fittings": 0, "teesThrough": 1, "teesByBranch": 1 }] } }
              ],
              "testHoles": [{ "id": "T1", "at": [37, 7], "found": "damp sand" }, { "id": "T2", "at": [0.1, 4.1] }],
              "stages": [
                { "id": "vacuum cleaner", "kind": "communication test", "openings": { "sump": "open", "north": { "state": "sealed", "sealedFraction": "99 %" } },
                  "sources": { "S1": { "pressure": "-8 kPa" }, "S2": { "flow": "0 cfm" } },
                  "readings": [{ "hole": "T1", "fanOff": "1.2 Pa", "fanOn": "-0.4 Pa", "spread": "0.2 Pa", "count": 6, "meterStep": "0.1 Pa", "waited": "90 s", "time": "2026-01-20T14:05" }],
                  "system": [{ "suctionPoint": "S1", "flow": "22 cfm", "flowUncertainty": "2 cfm", "riser": "-0.9 inH2O", "time": "2026-01-20T14:05:30+01:00" },
                    { "suctionPoint": "S2", "flowBelow": "5 cfm", "pit": "-120 Pa", "spread": "0.4 Pa", "meterStep": "0.1 Pa" },
                    { "suctionPoint": "S3", "inPipe": { "diameter": "4 in", "velocityPressure": ["9 Pa", "11.5 Pa", "11 Pa", "8.5 Pa"], "position": "traverse", "pressureStep": "0.5 Pa", "density": "1.1 kg/m3" } },
                    { "suctionPoint": "S4", "inPipe": { "diameter": "3 in", "velocity": ["900 fpm"], "position": "centre line", "velocityStep": "10 fpm" } }],
                  "time": "2026-01-20", "notes": "Windy." },
                { "id": "start", "kind": "start-up" }
              ],
              "target": { "vacuum": "0.02 inH2O", "choice": "the owner's" },
              "equipment": {
                "risers": [{ "id": "R", "fan": [["0 cfm", "1.5 inH2O"], ["120 cfm", "0 inH2O"]],
                             "pipe": { "nominal": "4 in", "length": "20 ft", "fittings": 1, "rise": "18 ft" }, "discharge": "-1 Pa" }],
                "fans": [{ "id": "A", "curve": [["0 cfm", "1 inH2O"], ["60 cfm", "0.8 inH2O"], ["100 cfm", "0 inH2O"]], "power": ["40 W", "44 W", "42 W"],
                           "density": "0.075 lb/ft3", "steadyFrom": "10 cfm", "arrangement": "two in series", "invented": true }],
                "plannedPipes": [{ "nominal": "3 in", "length": "25 ft", "ells": 3 }]
              },
              "plan": {
                "north": 30,
                "noDrillAreas": [{ "id": "gas line", "outline": [[2, 20], [4, 20], [4, 27], [2, 27]], "reason": "located by the utility" }],
                "underlay": { "picture": "photos/plan.png", "corner": [-1, -2], "pixel": "5 mm", "turned": 1.5 }
              }
            }
            """;
}
