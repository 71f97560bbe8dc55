"""The regions with built-in school holidays: what they are called, where their pupils live, about how many.

Towns with their position and residents, and the residents of each region, are rounded and from memory; they
only weigh calendars against each other. Which part of a country follows which calendar: France, decree of
7 December 2022 (zones by académie; every region lies in one zone, Corsica in none); Netherlands and Belgium,
from memory, Gelderland and Brussels follow two; elsewhere every state has its own.
"""

from dataclasses import dataclass

from tripplan.documents.calendars.calendars import PupilTown

_PUPILS_OF_RESIDENTS = 0.12
"""Share of residents who go to school [-]. No source, our guess."""


@dataclass(frozen=True)
class SchoolRegion:
    """A region whose schools share one calendar.

    Attributes:
        code: the country's code and the region's, such as DE-BY or FR-A.
        country: ISO 3166-1 code.
        table_name: what the package `holidays` calls the region.
        name: in English.
        parts: ISO 3166-2 codes, without the country, of the parts that follow it.
        residents: how many people live there, in thousands; from memory.
        towns: where they live, weighed by their residents.
    """

    code: str
    country: str
    table_name: str
    name: str
    parts: tuple[str, ...]
    residents: int
    towns: tuple[PupilTown, ...]

    @property
    def pupils(self) -> int:
        """How many go to school there; a guess, a share of the residents."""
        return round(self.residents * _PUPILS_OF_RESIDENTS) * 1000

    @property
    def weight(self) -> float:
        """All its towns together [-]."""
        return sum(town.part for town in self.towns)


_Town = tuple[str, float, float, int]


def _region(code: str, table_name: str, name: str, parts: str, residents: int, *towns: _Town) -> SchoolRegion:
    return SchoolRegion(
        code=code,
        country=code[:2],
        table_name=table_name,
        name=name,
        parts=tuple(parts.split()),
        residents=residents,
        towns=tuple(
            PupilTown(name=town, latitude=latitude, longitude=longitude, part=float(part))
            for town, latitude, longitude, part in towns
        ),
    )


# Code, name in the package, name, ISO parts, residents [thousands]; towns: name, degrees north, east, weight.
REGIONS = (
    _region("AT-1", "1", "Burgenland", "1", 301, ("Eisenstadt", 47.85, 16.52, 15)),
    _region(
        "AT-2", "2", "Carinthia", "2", 569, ("Klagenfurt", 46.62, 14.31, 105), ("Villach", 46.61, 13.85, 65)
    ),
    _region(
        "AT-3",
        "3",
        "Lower Austria",
        "3",
        1723,
        ("St. Pölten", 48.20, 15.63, 60),
        ("Wiener Neustadt", 47.81, 16.24, 50),
        ("Krems", 48.41, 15.61, 25),
    ),
    _region(
        "AT-4",
        "4",
        "Upper Austria",
        "4",
        1530,
        ("Linz", 48.31, 14.29, 210),
        ("Wels", 48.16, 14.03, 65),
        ("Steyr", 48.04, 14.42, 38),
    ),
    _region(
        "AT-5", "5", "Salzburg", "5", 571, ("Salzburg", 47.80, 13.04, 157), ("Zell am See", 47.32, 12.80, 30)
    ),
    _region("AT-6", "6", "Styria", "6", 1270, ("Graz", 47.07, 15.44, 300), ("Leoben", 47.38, 15.09, 60)),
    _region(
        "AT-7",
        "7",
        "Tyrol",
        "7",
        775,
        ("Innsbruck", 47.27, 11.39, 132),
        ("Kufstein", 47.58, 12.17, 40),
        ("Lienz", 46.83, 12.77, 15),
    ),
    _region(
        "AT-8", "8", "Vorarlberg", "8", 409, ("Dornbirn", 47.41, 9.74, 50), ("Feldkirch", 47.24, 9.60, 35)
    ),
    _region("AT-9", "9", "Vienna", "9", 2006, ("Vienna", 48.21, 16.37, 2006)),
    _region("AU-ACT", "ACT", "Australian Capital Territory", "ACT", 470, ("Canberra", -35.28, 149.13, 470)),
    _region(
        "AU-NSW",
        "NSW",
        "New South Wales",
        "NSW",
        8400,
        ("Sydney", -33.87, 151.21, 5400),
        ("Newcastle", -32.93, 151.78, 500),
        ("Wollongong", -34.43, 150.89, 300),
        ("Coffs Harbour", -30.30, 153.11, 120),
        ("Wagga Wagga", -35.11, 147.37, 60),
    ),
    _region(
        "AU-NT",
        "NT",
        "Northern Territory",
        "NT",
        255,
        ("Darwin", -12.46, 130.84, 150),
        ("Alice Springs", -23.70, 133.88, 26),
    ),
    _region(
        "AU-QLD",
        "QLD",
        "Queensland",
        "QLD",
        5500,
        ("Brisbane", -27.47, 153.03, 2600),
        ("Gold Coast", -28.02, 153.40, 700),
        ("Townsville", -19.26, 146.82, 190),
        ("Cairns", -16.92, 145.77, 160),
    ),
    _region(
        "AU-SA",
        "SA",
        "South Australia",
        "SA",
        1880,
        ("Adelaide", -34.93, 138.60, 1450),
        ("Mount Gambier", -37.83, 140.78, 27),
    ),
    _region(
        "AU-TAS",
        "TAS",
        "Tasmania",
        "TAS",
        575,
        ("Hobart", -42.88, 147.33, 250),
        ("Launceston", -41.44, 147.14, 110),
    ),
    _region(
        "AU-VIC",
        "VIC",
        "Victoria",
        "VIC",
        6900,
        ("Melbourne", -37.81, 144.96, 5200),
        ("Geelong", -38.15, 144.36, 290),
        ("Ballarat", -37.56, 143.85, 115),
        ("Bendigo", -36.76, 144.28, 105),
    ),
    _region(
        "AU-WA",
        "WA",
        "Western Australia",
        "WA",
        2950,
        ("Perth", -31.95, 115.86, 2300),
        ("Bunbury", -33.33, 115.64, 80),
        ("Geraldton", -28.77, 114.61, 40),
    ),
    _region(
        "BE-VLG",
        "Flemish",
        "Flemish Community",
        "VLG BRU VAN VBR VLI VOV VWV",
        6800,
        ("Antwerp", 51.22, 4.40, 530),
        ("Ghent", 51.05, 3.72, 265),
        ("Bruges", 51.21, 3.22, 120),
        ("Leuven", 50.88, 4.70, 100),
        ("Hasselt", 50.93, 5.34, 80),
        ("Brussels", 50.85, 4.35, 200),
    ),
    _region(
        "BE-WAL",
        "French",
        "French Community of Belgium",
        "WAL BRU WBR WHT WLG WLX WNA",
        4700,
        ("Brussels", 50.85, 4.35, 1000),
        ("Charleroi", 50.41, 4.44, 200),
        ("Liège", 50.63, 5.57, 195),
        ("Namur", 50.47, 4.87, 112),
        ("Mons", 50.45, 3.95, 95),
    ),
    _region(
        "BE-DG",
        "German",
        "German-speaking Community of Belgium",
        "WLG",
        79,
        ("Eupen", 50.63, 6.04, 20),
        ("Sankt Vith", 50.28, 6.13, 10),
    ),
    _region(
        "DE-BB",
        "BB",
        "Brandenburg",
        "BB",
        2580,
        ("Potsdam", 52.40, 13.06, 185),
        ("Cottbus", 51.76, 14.33, 100),
        ("Frankfurt (Oder)", 52.34, 14.55, 57),
    ),
    _region("DE-BE", "BE", "Berlin", "BE", 3700, ("Berlin", 52.52, 13.40, 3700)),
    _region(
        "DE-BW",
        "BW",
        "Baden-Württemberg",
        "BW",
        11280,
        ("Stuttgart", 48.78, 9.18, 630),
        ("Mannheim", 49.49, 8.47, 315),
        ("Karlsruhe", 49.01, 8.40, 308),
        ("Freiburg", 48.00, 7.85, 236),
        ("Ulm", 48.40, 9.99, 128),
        ("Konstanz", 47.66, 9.18, 85),
    ),
    _region(
        "DE-BY",
        "BY",
        "Bavaria",
        "BY",
        13370,
        ("Munich", 48.14, 11.58, 1510),
        ("Nuremberg", 49.45, 11.08, 523),
        ("Augsburg", 48.37, 10.90, 301),
        ("Regensburg", 49.01, 12.10, 157),
        ("Würzburg", 49.79, 9.95, 127),
        ("Passau", 48.57, 13.45, 53),
    ),
    _region(
        "DE-HB", "HB", "Bremen", "HB", 685, ("Bremen", 53.08, 8.80, 569), ("Bremerhaven", 53.55, 8.58, 116)
    ),
    _region(
        "DE-HE",
        "HE",
        "Hesse",
        "HE",
        6390,
        ("Frankfurt", 50.11, 8.68, 773),
        ("Kassel", 51.31, 9.48, 204),
        ("Darmstadt", 49.87, 8.65, 162),
        ("Fulda", 50.55, 9.68, 69),
    ),
    _region("DE-HH", "HH", "Hamburg", "HH", 1892, ("Hamburg", 53.55, 9.99, 1892)),
    _region(
        "DE-MV",
        "MV",
        "Mecklenburg-Western Pomerania",
        "MV",
        1628,
        ("Rostock", 54.09, 12.13, 209),
        ("Schwerin", 53.63, 11.41, 98),
        ("Neubrandenburg", 53.56, 13.26, 63),
    ),
    _region(
        "DE-NI",
        "NI",
        "Lower Saxony",
        "NI",
        8140,
        ("Hanover", 52.37, 9.73, 545),
        ("Brunswick", 52.27, 10.52, 252),
        ("Oldenburg", 53.14, 8.21, 172),
        ("Osnabrück", 52.28, 8.05, 167),
        ("Göttingen", 51.54, 9.92, 118),
    ),
    _region(
        "DE-NW",
        "NW",
        "North Rhine-Westphalia",
        "NW",
        18140,
        ("Cologne", 50.94, 6.96, 1085),
        ("Düsseldorf", 51.23, 6.78, 629),
        ("Dortmund", 51.51, 7.47, 593),
        ("Essen", 51.46, 7.01, 584),
        ("Bielefeld", 52.02, 8.53, 338),
        ("Münster", 51.96, 7.63, 320),
        ("Aachen", 50.78, 6.08, 252),
    ),
    _region(
        "DE-RP",
        "RP",
        "Rhineland-Palatinate",
        "RP",
        4160,
        ("Mainz", 50.00, 8.27, 220),
        ("Ludwigshafen", 49.48, 8.45, 174),
        ("Koblenz", 50.36, 7.59, 115),
        ("Trier", 49.76, 6.64, 112),
    ),
    _region(
        "DE-SH",
        "SH",
        "Schleswig-Holstein",
        "SH",
        2953,
        ("Kiel", 54.32, 10.14, 247),
        ("Lübeck", 53.87, 10.69, 218),
        ("Flensburg", 54.78, 9.44, 92),
    ),
    _region("DE-SL", "SL", "Saarland", "SL", 993, ("Saarbrücken", 49.23, 7.00, 182)),
    _region(
        "DE-SN",
        "SN",
        "Saxony",
        "SN",
        4090,
        ("Leipzig", 51.34, 12.37, 616),
        ("Dresden", 51.05, 13.74, 563),
        ("Chemnitz", 50.83, 12.92, 248),
    ),
    _region(
        "DE-ST",
        "ST",
        "Saxony-Anhalt",
        "ST",
        2187,
        ("Halle", 51.48, 11.97, 242),
        ("Magdeburg", 52.12, 11.63, 239),
    ),
    _region(
        "DE-TH",
        "TH",
        "Thuringia",
        "TH",
        2127,
        ("Erfurt", 50.98, 11.03, 215),
        ("Jena", 50.93, 11.59, 111),
        ("Gera", 50.88, 12.08, 94),
    ),
    _region(
        "FR-A",
        "Zone A",
        "France, zone A",
        "ARA BFC NAQ",
        17000,
        ("Lyon", 45.76, 4.84, 1700),
        ("Bordeaux", 44.84, -0.58, 990),
        ("Grenoble", 45.19, 5.72, 460),
        ("Clermont-Ferrand", 45.78, 3.08, 300),
        ("Dijon", 47.32, 5.04, 250),
        ("Limoges", 45.83, 1.26, 190),
        ("Poitiers", 46.58, 0.34, 180),
        ("Besançon", 47.24, 6.02, 140),
    ),
    _region(
        "FR-B",
        "Zone B",
        "France, zone B",
        "BRE CVL GES HDF NOR PDL PAC",
        29000,
        ("Marseille", 43.30, 5.37, 1630),
        ("Lille", 50.63, 3.06, 1060),
        ("Nice", 43.70, 7.27, 940),
        ("Nantes", 47.22, -1.55, 680),
        ("Strasbourg", 48.57, 7.75, 500),
        ("Rouen", 49.44, 1.10, 470),
        ("Rennes", 48.11, -1.68, 370),
        ("Tours", 47.39, 0.69, 360),
        ("Nancy", 48.69, 6.18, 290),
        ("Reims", 49.26, 4.03, 210),
        ("Amiens", 49.89, 2.30, 165),
    ),
    _region(
        "FR-C",
        "Zone C",
        "France, zone C",
        "IDF OCC",
        18500,
        ("Paris", 48.86, 2.35, 10900),
        ("Toulouse", 43.60, 1.44, 1060),
        ("Montpellier", 43.61, 3.88, 470),
    ),
    _region(
        "NL-MIDDEN",
        "Midden",
        "Netherlands, middle region",
        "UT ZH GE",
        6800,
        ("Rotterdam", 51.92, 4.48, 665),
        ("The Hague", 52.08, 4.31, 560),
        ("Utrecht", 52.09, 5.12, 370),
        ("Ede", 52.04, 5.67, 120),
    ),
    _region(
        "NL-NOORD",
        "Noord",
        "Netherlands, northern region",
        "DR FL FR GR OV NH",
        6200,
        ("Amsterdam", 52.37, 4.90, 920),
        ("Groningen", 53.22, 6.57, 240),
        ("Almere", 52.35, 5.26, 225),
        ("Enschede", 52.22, 6.89, 160),
        ("Leeuwarden", 53.20, 5.80, 125),
    ),
    _region(
        "NL-ZUID",
        "Zuid",
        "Netherlands, southern region",
        "LI NB ZE GE",
        5000,
        ("Eindhoven", 51.44, 5.48, 245),
        ("Tilburg", 51.56, 5.09, 227),
        ("Nijmegen", 51.84, 5.86, 183),
        ("Maastricht", 50.85, 5.69, 122),
        ("Middelburg", 51.50, 3.61, 50),
    ),
    _region(
        "PL-02",
        "02",
        "Lower Silesia",
        "02",
        2890,
        ("Wrocław", 51.11, 17.04, 674),
        ("Legnica", 51.21, 16.16, 93),
    ),
    _region(
        "PL-04",
        "04",
        "Kuyavia-Pomerania",
        "04",
        2000,
        ("Bydgoszcz", 53.12, 18.01, 330),
        ("Toruń", 53.01, 18.60, 195),
    ),
    _region("PL-06", "06", "Lublin", "06", 2020, ("Lublin", 51.25, 22.57, 331), ("Zamość", 50.72, 23.25, 60)),
    _region(
        "PL-08",
        "08",
        "Lubusz",
        "08",
        980,
        ("Zielona Góra", 51.94, 15.51, 139),
        ("Gorzów Wielkopolski", 52.73, 15.24, 117),
    ),
    _region("PL-10", "10", "Łódź", "10", 2370, ("Łódź", 51.76, 19.46, 655)),
    _region(
        "PL-12",
        "12",
        "Lesser Poland",
        "12",
        3430,
        ("Kraków", 50.06, 19.94, 803),
        ("Tarnów", 50.01, 20.99, 105),
    ),
    _region(
        "PL-14", "14", "Mazovia", "14", 5510, ("Warsaw", 52.23, 21.01, 1862), ("Radom", 51.40, 21.15, 200)
    ),
    _region("PL-16", "16", "Opole", "16", 940, ("Opole", 50.67, 17.93, 126)),
    _region(
        "PL-18",
        "18",
        "Subcarpathia",
        "18",
        2080,
        ("Rzeszów", 50.04, 22.00, 198),
        ("Przemyśl", 49.78, 22.77, 58),
    ),
    _region("PL-20", "20", "Podlaskie", "20", 1140, ("Białystok", 53.13, 23.16, 292)),
    _region(
        "PL-22", "22", "Pomerania", "22", 2360, ("Gdańsk", 54.35, 18.65, 487), ("Słupsk", 54.46, 17.03, 87)
    ),
    _region(
        "PL-24",
        "24",
        "Silesia",
        "24",
        4350,
        ("Katowice", 50.26, 19.02, 280),
        ("Częstochowa", 50.81, 19.12, 208),
        ("Bielsko-Biała", 49.82, 19.04, 167),
    ),
    _region("PL-26", "26", "Holy Cross", "26", 1180, ("Kielce", 50.87, 20.63, 183)),
    _region(
        "PL-28", "28", "Warmia-Masuria", "28", 1370, ("Olsztyn", 53.78, 20.48, 167), ("Ełk", 53.83, 22.36, 60)
    ),
    _region(
        "PL-30",
        "30",
        "Greater Poland",
        "30",
        3490,
        ("Poznań", 52.41, 16.93, 541),
        ("Kalisz", 51.76, 18.09, 95),
    ),
    _region(
        "PL-32",
        "32",
        "West Pomerania",
        "32",
        1640,
        ("Szczecin", 53.43, 14.55, 391),
        ("Koszalin", 54.19, 16.18, 104),
    ),
)
