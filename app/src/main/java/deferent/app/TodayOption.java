package deferent.app;

import deferent.motion.pairing.Refusal;
import deferent.record.LogJson;
import java.time.LocalDate;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** Which day it is. */
final class TodayOption {
    @Option(
            names = "--today",
            paramLabel = "DAY",
            converter = Day.class,
            description = "The day that counts as today, such as 2026-11-28; unsaid, today.")
    private @Nullable LocalDate day;

    LocalDate day() {
        return day == null ? LocalDate.now(ZoneId.systemDefault()) : day;
    }

    /** For options that take a day. */
    static final class Day implements ITypeConverter<LocalDate> {
        @Override
        public LocalDate convert(String text) {
            try {
                return LogJson.day(text);
            } catch (Refusal noDay) {
                throw new TypeConversionException("it " + noDay.what() + "; " + noDay.right());
            }
        }
    }
}
