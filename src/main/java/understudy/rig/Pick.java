package understudy.rig;

/** Settles what each part really is, within its tolerance. */
interface Pick {
    double of(Spread spread);

    /** For capacitors and inductors. */
    double ofStore(Spread spread);

    default Spread settle(Spread spread) {
        return Spread.exactly(of(spread));
    }

    default Spread settleStore(Spread spread) {
        return Spread.exactly(ofStore(spread));
    }
}
