package deferent.motion.pairing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.trial.Any;
import deferent.motion.trial.Property;

class SizeProperties {
    @Property
    void aSizeSetToWhatItReadsChangesNothing(Any any) {
        Pairing pairing = any.from(AnyPairing::of);
        for (Size size : Size.of(pairing)) {
            double value = size.read(pairing).orElseThrow();
            Pairing again = size.set(pairing, value);
            for (Size other : Size.of(pairing)) {
                assertThat(other.read(again).orElseThrow())
                        .as("%s after setting %s", other.key(), size.key())
                        .isCloseTo(other.read(pairing).orElseThrow(), within(1e-9));
            }
        }
    }

    @Property
    void aSizeReadsWhatItWasSetTo(Any any) {
        Pairing pairing = any.from(AnyPairing::of);
        for (Size size : Size.of(pairing)) {
            if (size.kind() == Size.Kind.TIMING || size.kind() == Size.Kind.AMPLITUDE) {
                continue;
            }
            double value = size.read(pairing).orElseThrow() + 0.01;
            assertThat(size.read(size.set(pairing, value)).orElseThrow())
                    .as(size.key())
                    .isCloseTo(value, within(1e-9));
        }
    }

    @Property
    void everySizeIsFoundAgainByItsKey(Any any) {
        Pairing pairing = any.from(AnyPairing::of);
        for (Size size : Size.of(pairing)) {
            assertThat(Size.named(size.key())).isEqualTo(size);
        }
    }
}
