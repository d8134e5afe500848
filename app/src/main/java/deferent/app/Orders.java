package deferent.app;

import deferent.search.seek.Order;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Orders of answers as words: "contrast", "near-shelf". */
final class Orders implements ITypeConverter<Order> {
    @Override
    public Order convert(String text) {
        return Arrays.stream(Order.values())
                .filter(order -> word(order).equals(text.strip().toLowerCase(Locale.ROOT)))
                .findFirst()
                .orElseThrow(
                        () ->
                                new TypeConversionException(
                                        "\""
                                                + text
                                                + "\" is no order; give one of "
                                                + Arrays.stream(Order.values())
                                                        .map(Orders::word)
                                                        .collect(Collectors.joining(", "))));
    }

    private static String word(Order order) {
        return order.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
