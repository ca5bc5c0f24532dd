package understudy;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaCall;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaConstructorCall;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import understudy.wave.Renderer;
import understudy.wave.VoltSource;

/**
 * Follows every call that rendering can lead to, and looks for what must not happen there: objects made, streams,
 * formatting, locks, waiting, clocks, files. Planning, which happens before, may do all of that.
 */
class RenderPathTest {

    /** Where nothing is to be found that a render path could need. */
    private static final List<String> FORBIDDEN_PACKAGES = List.of(
            "java.util.stream", "java.util.logging", "java.util.concurrent.locks", "java.io", "java.nio", "java.net",
            "java.time", "java.text");

    private static final Set<String> FORBIDDEN_CALLS = Set.of(
            "java.lang.String.format", "java.lang.String.formatted", "java.lang.String.valueOf", "java.lang.Thread.sleep",
            "java.lang.System.nanoTime", "java.lang.System.currentTimeMillis", "java.lang.Object.wait",
            "java.lang.Double.valueOf", "java.lang.Integer.valueOf", "java.lang.Long.valueOf", "java.util.List.iterator");

    private final JavaClasses house = new ClassFileImporter().importPackages("understudy");

    @Test
    void renderingOnlyComputes() {
        Set<JavaCodeUnit> path = reachableFrom(Renderer.class);
        // a path that stops at the front door would prove nothing
        assertThat(path).extracting(unit -> unit.getOwner().getSimpleName()).contains("Renderer", "Motion", "EdgeVoice", "FluxVoice");
        assertThat(offences(path)).isEmpty();
    }

    @Test
    void offencesAreSeenAlsoBehindAnInterface() {
        assertThat(offences(reachableFrom(Offender.class))).hasSize(4)
                .anySatisfy(offence -> assertThat(offence).contains("java.lang.String.format"))
                .anySatisfy(offence -> assertThat(offence).contains("java.lang.System.nanoTime"))
                .anySatisfy(offence -> assertThat(offence).contains("java.lang.StringBuilder"))
                .anySatisfy(offence -> assertThat(offence).contains("java.lang.Double.valueOf"));
    }

    private Set<JavaCodeUnit> reachableFrom(Class<? extends VoltSource> source) {
        Set<JavaCodeUnit> seen = new LinkedHashSet<>();
        Deque<JavaCodeUnit> open = new ArrayDeque<>();
        open.add(house.get(source).getMethod("render", double[][].class, int.class));
        while (!open.isEmpty()) {
            JavaCodeUnit unit = open.remove();
            if (seen.add(unit)) {
                unit.getCallsFromSelf().forEach(call -> open.addAll(possibleTargets(call)));
            }
        }
        return seen;
    }

    /** The method named, and those that override it: which one is called is known only when it runs. */
    private static List<JavaCodeUnit> possibleTargets(JavaCall<?> call) {
        JavaClass owner = call.getTargetOwner();
        if (!owner.getPackageName().startsWith("understudy")) {
            return List.of();
        }
        List<JavaCodeUnit> targets = new ArrayList<>();
        call.getTarget().resolveMember().ifPresent(targets::add);
        owner.getAllSubclasses().stream()
                .flatMap(type -> type.getMethods().stream())
                .filter(method -> method.getName().equals(call.getName())
                        && method.getRawParameterTypes().equals(call.getTarget().getRawParameterTypes()))
                .forEach(targets::add);
        return targets;
    }

    private static List<String> offences(Set<JavaCodeUnit> path) {
        return path.stream().flatMap(unit -> unit.getCallsFromSelf().stream())
                .filter(RenderPathTest::isForbidden).map(JavaCall::getDescription).toList();
    }

    private static boolean isForbidden(JavaCall<?> call) {
        String owner = call.getTargetOwner().getPackageName();
        // an exception may be made: it ends the playing, and the compiler puts some where none can come
        boolean makesObject = call instanceof JavaConstructorCall && !call.getOrigin().isConstructor()
                && !call.getTargetOwner().isAssignableTo(Throwable.class);
        return makesObject
                || FORBIDDEN_PACKAGES.stream().anyMatch(name -> owner.equals(name) || owner.startsWith(name + "."))
                || FORBIDDEN_CALLS.contains(call.getTargetOwner().getName() + "." + call.getName());
    }

    /** Does what a source must not do, one call away. */
    static final class Offender implements VoltSource {

        interface Voice {
            void speak(double[] volts);
        }

        static final class Loud implements Voice {
            private Object kept;

            @Override
            public void speak(double[] volts) {
                kept = String.format("%s", new StringBuilder());
                kept = (Object) Double.valueOf(volts[0]);
                volts[0] = System.nanoTime();
            }
        }

        private final Voice voice = new Loud();

        @Override
        public int channels() {
            return 1;
        }

        @Override
        public int rateHz() {
            return 48_000;
        }

        @Override
        public void render(double[][] volts, int frames) {
            voice.speak(volts[0]);
        }
    }
}
