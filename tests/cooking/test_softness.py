import pytest

from spoonproof.cooking.heat import ALPHA_FAST, minutes_to_heat
from spoonproof.cooking.softness import CookTimes
from spoonproof.cooking.time_row import SOFT, STRETCH
from spoonproof.model.recipe import Cut
from spoonproof.model.table import Row
from spoonproof.model.text import NOWHERE
from tests.cooking.bench import rows, times
from tests.each import each


def dice(mm: float) -> Cut:
    return Cut("dice", NOWHERE, mm, mm)


def test_crisp_tender_rows_are_stretched_and_marked() -> None:
    need = times().needed("parsnip", Cut("slice", NOWHERE, 6.35, 6.35), "steam")
    assert need is not None and need.stretched and need.published
    assert need.soft.low == pytest.approx(6 * STRETCH[0], abs=0.2)
    assert need.soft.high == pytest.approx(8 * STRETCH[1], abs=0.5)
    assert need.crisp.low == pytest.approx(6, abs=0.2)


def test_rows_that_say_soft_are_not() -> None:
    need = times().needed("pear", dice(10), "steam")
    assert need is not None and not need.stretched
    assert need.soft == need.crisp == (3, 6)


def test_a_range_names_the_source_of_each_end() -> None:
    need = times().needed("carrot", dice(6), "steam")
    assert need is not None
    assert need.low_row.source == "all-about-food-steaming"
    assert need.high_row.source == "kitchen-questions-steaming"


def test_nothing_is_soft_before_its_middle_is_hot() -> None:
    for food in {food for food, _ in times().rows}:
        for mm in (5, 12, 25, 40, 60, 80):
            need = times().needed(food, dice(mm), "steam")
            if need is not None and need.mm is not None:
                floor = minutes_to_heat("cube", mm, alpha=ALPHA_FAST)
                assert need.soft.low >= floor - 1e-9, (food, mm)


def test_no_row_is_faster_than_heat_allows() -> None:
    for found in times().rows.values():
        for row in found:
            if row.mm is not None and row.shape is not None and row.method in ("steam", "boil", "oven"):
                assert row.minutes.high >= minutes_to_heat(row.shape, row.mm, alpha=ALPHA_FAST), row


def test_the_scaling_by_thickness_predicts_a_published_size_from_another() -> None:
    # from quarter-inch slices alone: 30 mm cubes of carrot, published as 15 to 20 minutes
    thin = CookTimes.from_rows([row for row in rows("cook_times") if row.text("mm") == "6.35"])
    need = thin.needed("carrot", dice(30), "steam")
    assert need is not None and need.beyond
    assert need.crisp.low == pytest.approx(15, abs=3)
    assert need.crisp.high == pytest.approx(20, abs=5)


def test_the_common_five_to_seven_minutes_are_crisp_tender_at_best() -> None:
    for food in ("carrot", "parsnip", "swede", "potato", "sweet-potato", "beetroot", "winter-squash", "turnip"):
        need = times().needed(food, Cut("chunk", NOWHERE, 25, 25), "steam")
        assert need is not None and need.soft.low > 7, food


def test_what_the_table_does_not_know_is_none() -> None:
    assert times().needed("moon-cheese", None, "steam") is None
    assert times().needed("carrot", None, "soak") is None


def test_boiling_may_stand_in_for_steaming_and_says_so() -> None:
    need = times().needed("apple", dice(15), "boil")
    assert need is not None and need.stand_in == "steam"


def test_every_food_of_the_table_has_a_record() -> None:
    known = {row.text(column) for row in rows("foods") for column in ("softens_as", "id", "group")}
    missing = [food for food, _ in times().rows if food not in known]
    assert missing == []


def test_every_row_has_a_source_that_is_defined() -> None:
    from tests.cooking.bench import SHARED

    defined = (SHARED / "sources" / "cooking.yaml").read_text(encoding="utf-8")
    for table in ("cook_times", "vitamins_kept", "thermal", "softening", "verbs"):
        for row in rows(table):
            source = row.text("source")
            assert source == "common-practice" or f"- id: {source}\n" in defined, (table, row.line, source)
            if table != "verbs":
                assert (row.text("basis") == "common-practice") == (source == "common-practice")


def test_leaves_and_soft_fruit_take_what_cooks_say() -> None:
    spinach = times().needed("spinach", None, "steam")
    pear = times().needed("pear", dice(10), "steam")
    oats = times().needed("porridge-oats", None, "boil")
    soaked = times().needed("porridge-oats", None, "soak")
    assert spinach and pear and oats and soaked
    assert (spinach.soft.low, pear.soft.low, oats.soft.low, soaked.soft.low) == (2, 3, 3, 5)


@each(
    ("change", "words"),
    [
        ({"minutes_low": ""}, "needs minutes_low"),
        ({"minutes_low": "9", "minutes_high": "4"}, "smaller first"),
        ({"shape": "blob"}, "shape"),
        ({"method": "sing"}, "method"),
        ({"doneness": "nice"}, "doneness"),
        ({"source": ""}, "source"),
        ({"minutes_high": "soon"}, "should be a number"),
    ],
)
def test_a_faulty_row_is_refused_with_its_line(change: dict[str, str], words: str) -> None:
    cells = {
        "foods": "carrot", "method": "steam", "minutes_low": "4", "minutes_high": "6", "doneness": "soft",
        "source": "common-practice", "basis": "common-practice", **change,
    }  # fmt: skip
    with pytest.raises(ValueError, match=f"mine.csv:7: .*{words}"):
        CookTimes.from_rows([Row(cells, "mine.csv", 7)])


def test_published_softening_rates_spread_as_far_as_the_page_says() -> None:
    carrot = [row.number("k100_per_min") or 0.0 for row in rows("softening") if row.text("foods") == "carrot"]
    assert max(carrot) / min(carrot) == pytest.approx(14, abs=0.5)


def test_wilted_and_soft_rows_are_the_only_ones_that_are_not_stretched() -> None:
    for found in times().rows.values():
        for row in found:
            ratio = row.soft.high / row.minutes.high if row.minutes.high else 1.0
            assert ratio == pytest.approx(1.0 if row.doneness in SOFT else STRETCH[1])
