package deferent.motion.trial;

import java.lang.reflect.Method;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.InvocationInterceptor;
import org.junit.jupiter.api.extension.ParameterContext;
import org.junit.jupiter.api.extension.ParameterResolver;
import org.junit.jupiter.api.extension.ReflectiveInvocationContext;
import org.junit.platform.commons.support.ReflectionSupport;
import org.opentest4j.TestAbortedException;

/**
 * Tries a {@link Property} as often as it says. The seed is always the same unless {@code
 * -Ddeferent.seed} says another; {@code -Ddeferent.try} tries only that one. A failure tells both,
 * with what was drawn. A try that assumes what its values do not keep (JUnit's {@code assumeTrue})
 * is made up for by another.
 */
final class Trials implements ParameterResolver, InvocationInterceptor {
    /** How often a failing try is made plainer at most. */
    private static final int PLAINER = 100;

    @Override
    public boolean supportsParameter(ParameterContext parameter, ExtensionContext context) {
        return parameter.getParameter().getType() == Any.class;
    }

    @Override
    public Any resolveParameter(ParameterContext parameter, ExtensionContext context) {
        return new Any(0, List.of()); // Only stands in: each try is called with its own.
    }

    @Override
    public void interceptTestMethod(
            Invocation<Void> once,
            ReflectiveInvocationContext<Method> called,
            ExtensionContext context) {
        once.skip();
        Method method = called.getExecutable();
        Object test = called.getTarget().orElseThrow();
        String name = method.getDeclaringClass().getSimpleName() + "#" + method.getName();
        int tries = method.getAnnotation(Property.class).tries();
        Consumer<Any> property = any -> ReflectionSupport.invokeMethod(method, test, any);
        long seed = Long.getLong("deferent.seed", 1);
        Integer only = Integer.getInteger("deferent.try");
        if (only == null) {
            run(name, tries, seed, property);
        } else {
            attempt(name, only, seed, property);
        }
    }

    static void run(String name, int tries, long seed, Consumer<Any> property) {
        int kept = 0;
        for (int attempt = 1; kept < tries; attempt++) {
            try {
                attempt(name, attempt, seed, property);
                kept++;
            } catch (TestAbortedException unfit) {
                if (attempt - kept > tries) {
                    throw new AssertionError(
                            "%s fits only %d of %d tries: draw values that fit more often"
                                    .formatted(name, kept, attempt));
                }
            }
        }
    }

    private static void attempt(String name, int attempt, long seed, Consumer<Any> property) {
        long mixed = (31 * seed + name.hashCode()) * 1_000_003 + attempt;
        Any any = new Any(mixed, List.of());
        Throwable failure = failure(property, any);
        if (failure instanceof TestAbortedException unfit) {
            throw unfit;
        }
        if (failure == null) {
            return;
        }
        Any plain = any;
        int left = PLAINER;
        for (int i = 0; i < plain.choices().size() && left > 0; i++) {
            List<Long> choices = new ArrayList<>(plain.choices());
            if (choices.set(i, 0L) != 0) {
                left--;
                Any plainer = new Any(mixed, choices);
                Throwable still = failure(property, plainer);
                if (still != null && still.getClass() == failure.getClass()) {
                    plain = plainer;
                    failure = still;
                }
            }
        }
        throw new AssertionError(
                """
                %s
                With: %s
                Drawn at first: %s
                Once more: mvn -pl %s -am test -Dsurefire.failIfNoSpecifiedTests=false \
                -Dtest='%s' -Ddeferent.seed=%d -Ddeferent.try=%d
                """
                        .formatted(
                                failure,
                                plain.shown(),
                                any.shown(),
                                Path.of("").toAbsolutePath().getFileName(),
                                name,
                                seed,
                                attempt),
                failure);
    }

    // Null where the property holds.
    private static Throwable failure(Consumer<Any> property, Any any) {
        try {
            property.accept(any);
            return null;
        } catch (Throwable failure) { // Whatever is thrown is thrown on, with its values.
            return failure;
        }
    }
}
