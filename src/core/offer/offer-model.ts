import type { Assumption } from "../model/assumption.js";
import type { Caution } from "../plan/advice/cautions.js";
import type { DyeKind } from "../quantity/dye/dye-kinds.js";
import type { LeftOutTimes } from "./colours/left-out.js";
import type { OfferedColour } from "./colours/offered-colours.js";

/** Working days of a week. Common practice, no source. */
export const workDaysPerWeek = 5;

/** What is asked of an offer. */
export interface OfferWish {
  /** Good parts in a batch, ascending. */
  readonly quantities: readonly number[];
  /** Its price is the list price; one of the quantities. */
  readonly listQuantity: number;
  /** CIEDE2000. */
  readonly tolerance: number;
  /** Good parts a year of each colour; absent: not known. */
  readonly salesPerYear?: number;
  /** In which tanks, dryers and hands work. */
  readonly hoursPerWeek: number;
  /** Price of the jug that a colour's bath is kept in. */
  readonly jug: number;
}

/** Price list: one part in one colour on one base, in a batch of its own. Money null where it is not known. */
export interface PriceRow {
  readonly part: string;
  readonly shade: string;
  /** Null for undyed parts. */
  readonly dye: string | null;
  readonly base: string | null;
  readonly quantity: number;
  /** With a kept bath. */
  readonly costPerPart: number | null;
  readonly price: number | null;
  /** Before tax, with the ending of the price. */
  readonly netPrice: number | null;
  /** Profit as a share of the price before tax. */
  readonly margin: number | null;
  readonly profitPerPart: number | null;
  /** Of hands, and of the tank; null for undyed parts, which take neither. */
  readonly profitPerHour: number | null;
  readonly profitPerTankHour: number | null;
  /** Where the order pays for its whole bath, which is dumped; null for undyed parts. */
  readonly freshBath: { readonly costPerPart: number | null; readonly price: number | null } | null;
  /** A good part; as what follows. */
  readonly handsOnMinutes: number;
  readonly tankMinutes: number;
  readonly dryerMinutes: number;
  /** Taken up and dragged out: mL of concentrate or g of powder. */
  readonly dyePerPart: number;
  readonly dyeKind: DyeKind | null;
  /** At this price, good parts that pay for a fresh bath of their own; null where no quantity does, and for undyed parts. */
  readonly paysFromParts: number | null;
  /** Good parts in a working day of such batches, by the slowest of hands, tank and dryer; null for undyed parts. */
  readonly partsPerDay: number | null;
  /** How often the batch is repeated on the kept bath; null where it is not known. */
  readonly everyDays: number | null;
  readonly reachable: boolean;
  /** On another base than the swatches'. */
  readonly estimated: boolean;
}

/** When a colour has earned what it costs, at the list prices and in the mix of the batch's orders. */
export interface ColourPays {
  readonly dye: string;
  readonly tank: string;
  /** A fresh bath: dye and water, set-up and cleaning, heating, disposal. */
  readonly bathCost: number;
  /** Mean of what a good part leaves towards it. */
  readonly contributionPerPart: number;
  /** Good parts that pay for a bath of their own; null where no quantity does, as what follows. */
  readonly batchParts: number | null;
  readonly mix: readonly {
    readonly part: string;
    readonly shade: string;
    readonly base: string | null;
    readonly weight: number;
    readonly batchParts: number | null;
  }[];
  /** Baths that age takes in a year: 1 where no shelf life is given. */
  readonly makeUpsPerYear: number;
  readonly shelfLifeKnown: boolean;
  readonly yearParts: number | null;
  /** With the price of the tank, where it is known, and the jug in it. */
  readonly firstYearParts: number | null;
  readonly tankPrice: number | null;
  /** At the sales asked for. */
  readonly yearProfit: number | null;
}

/** Hours of one resource. */
export interface ResourceUse {
  readonly resource: "hands" | "tank" | "dryer";
  readonly name: string;
  /** At the sales asked for in a month, or for one batch of each at the list quantity. */
  readonly hours: number;
}

/** The resource that is used most of equal hours, and what it earns. */
export interface Constraint extends ResourceUse {
  readonly uses: readonly ResourceUse[];
  /** A month. */
  readonly hoursThere: number;
  /** Share of the hours that the sales take; null where they are not known. */
  readonly used: number | null;
  /** Profit that one more hour brings; 0 where hours are left over. */
  readonly nextHour: number;
  /** Dyed rows at the list quantity, best first for an hour of this kind of resource. */
  readonly ranked: readonly {
    readonly part: string;
    readonly shade: string;
    readonly base: string | null;
    readonly profitPerHour: number;
    /** Of its tank. */
    readonly profitPerTankHour: number;
  }[];
}

/** What to sell, at which prices. */
export interface Offer {
  readonly batch: string;
  readonly currency: string | null;
  readonly wish: OfferWish;
  readonly colours: readonly OfferedColour[];
  readonly leftOut: readonly LeftOutTimes[];
  readonly rows: readonly PriceRow[];
  readonly pays: readonly ColourPays[];
  readonly constraint: Constraint | null;
  /** What costs leave out since its price was not given. */
  readonly notCounted: readonly string[];
  readonly assumptions: readonly Assumption[];
  readonly cautions: readonly Caution[];
}
