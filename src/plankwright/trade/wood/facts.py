"""Where the figures of species.csv come from; each row of it names its sources by their keys."""

from types import MappingProxyType

from plankwright.trade.source import Source, Trust

_TABLE_13_5 = "Wood Handbook, FPL-GTR-190 (2010), Table 13-5"
_TABLE_4_3 = "Wood Handbook, FPL-GTR-190 (2010), Table 4-3"
_TABLE_5_3 = "Wood Handbook, FPL-GTR-190 (2010), Table 5-3a"

SOURCES = MappingProxyType(
    {
        source.key: source
        for source in (
            Source(
                key="table-13-5",
                title=_TABLE_13_5,
                address="https://issuhub.com/view/index/5801?pageIndex=307",
                trust=Trust.READ,
            ),
            Source(
                key="table-13-5-computed",
                title=f"{_TABLE_13_5}, in a transcription",
                trust=Trust.SECONDARY,
                note="It agrees with the coefficient computed from Table 4-3, which was read.",
            ),
            Source(
                key="table-13-5-copy",
                title=f"{_TABLE_13_5}, in a transcription",
                trust=Trust.SECONDARY,
                note="That copy agrees with every hardwood of the table that was read.",
            ),
            Source(
                key="table-13-5-reprint",
                title="Trade reprint of the coefficients of the Wood Handbook of 1987",
                address="http://highwayflooring.com/hardwood-floor-relative-stability",
                trust=Trust.SECONDARY,
                note="One of its other figures is wrong, so it is used for trade names only.",
            ),
            Source(
                key="table-4-3",
                title=_TABLE_4_3,
                address="https://issuhub.com/view/index/5801?pageIndex=85",
                trust=Trust.READ,
            ),
            Source(
                key="total-longleaf",
                title="Longleaf pine, shrinkage from green to ovendry, dealer's page",
                address="https://advantagelumber.com/species/longleaf-pine",
                trust=Trust.READ,
            ),
            Source(
                key="gravity-longleaf",
                title="Longleaf pine, specific gravity at 12 % moisture, carpenters' page",
                address="https://fastcarpenter.com/longleaf-pine-wood/",
                trust=Trust.READ,
            ),
            Source(
                key="gravity-strength",
                title="Strength properties of tree species, table of average specific gravities",
                address="http://synthmind.com/Tree_Species_Strength_Properties.htm",
                trust=Trust.SECONDARY,
                note="It does not name its source; its figures are those of the handbook at 12 % "
                "moisture, as far as they could be compared. One row of it is plainly misnamed and was "
                "left out.",
            ),
            Source(key="table-4-3-memory", title=_TABLE_4_3, trust=Trust.MEMORY),
            Source(
                key="table-5-3",
                title=_TABLE_5_3,
                address="https://issuu.com/nhla/docs/wood_handbook/107",
                trust=Trust.READ,
                note="Species and figures stand in separate blocks of that copy; they were paired by order.",
            ),
            Source(
                key="table-5-3-copy",
                title=f"{_TABLE_5_3}, rows at 12 % moisture, in a transcription",
                trust=Trust.SECONDARY,
                note="It quotes the rows as they are printed, of a copy that was not opened here "
                "(https://www.precisebits.com/PDF/USFS_mechanical_properties_of_wood.pdf). A row that stands "
                "for several species has their range.",
            ),
            Source(
                key="gravity-basic",
                title="Specific gravity in green volume, species table of the forest inventory of the United "
                "States, brought to 12 % moisture by the Wood Handbook's equation 4-11",
                address="https://github.com/kearutherford/BerkeleyForestsAnalytics/blob/"
                "760f863dca89e356f2823e56d3e7879efd149dd2/REF_SPECIES.csv",
                trust=Trust.COMPUTED,
                note="For species that Table 5-3a leaves out, with fibre saturation at 30 %. Where both "
                "have a species, they differ by 0.05 at most.",
            ),
            Source(
                key="gravity-manual",
                title="UFC 3-130-04, Table 2-2, specific gravity at 12 % moisture",
                address="https://buildingcriteria1.tpub.com/ufc_3_130_04/ufc_3_130_040044.htm",
                trust=Trust.READ,
            ),
            Source(
                key="gravity-extension",
                title="Relative working and physical properties, university extension table",
                address="https://owic.oregonstate.edu/table-relative-working-and-physical-properties-inch-pound",
                trust=Trust.READ,
            ),
        )
    }
)
